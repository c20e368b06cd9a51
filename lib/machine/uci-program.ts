// A second opinion from any program that speaks UCI. The program is the operator's own (a path in the
// configuration); what it prints is believed only where it is legal, and it never outlives its budget.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import type { Uci } from '#lib/rules/move.ts';
import type { Position } from '#lib/rules/position.ts';
import { findUci, playUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { killForsaken } from './inner/marked-processes.ts';
import { startUciProcess, type UciProcess } from './inner/uci-process.ts';

/** A program and its arguments, each passed on as it is: no shell ever sees them. */
export interface UciProgram {
  readonly path: string;
  readonly args: readonly string[];
}

/** What to ask: `budgetMs` of the clock in all, start of the program included. */
export interface UciQuestion {
  readonly position: Position;
  readonly nodes: number;
  readonly budgetMs: number;
}

/** What the program thinks, from the side to move. */
export interface SecondOpinion {
  /** The name that the program gives itself, cut at 100 characters; "" where it gives none. */
  readonly name: string;
  readonly move: Uci;
  /** The line it expects, `move` first; `[]` where it named none. */
  readonly line: readonly Uci[];
  readonly depth: number | null;
  readonly centipawns: number | null;
  /** Moves to mate, negative where the side to move is mated; null where no mate was claimed. */
  readonly mateIn: number | null;
}

/** Why there is no second opinion. `stage` is the command that was not answered. */
export type UciReason =
  | { readonly code: 'cannot-start'; readonly why: string }
  | { readonly code: 'no-answer'; readonly stage: UciStage; readonly budgetMs: number }
  | { readonly code: 'ended'; readonly stage: UciStage; readonly status: number | null }
  | { readonly code: 'too-much-output'; readonly stage: UciStage }
  | { readonly code: 'illegal-move'; readonly found: string }
  | { readonly code: 'illegal-line'; readonly found: string };

type UciStage = 'uci' | 'isready' | 'go';

/** The program may run over its budget by so much, while it is asked to stop; then it is killed. */
const GRACE = 1.2;

/**
 * Starts the program, asks one question and ends it, with everything it has started. Only FENs that we
 * have written ourselves are sent. At the budget it is told to stop, at 1.2 times the budget it is killed.
 */
export async function askUciProgram(
  program: UciProgram,
  question: UciQuestion,
): Promise<Result<SecondOpinion, UciReason>> {
  const child = startUciProcess(program, question.budgetMs * GRACE);
  try {
    return await converse(child, question);
  } finally {
    await child.end();
  }
}

/**
 * Ends programs whose asker was killed before it could end them (Linux): they carry the mark of a process that
 * is no more. Gives how many. Nobody else's process is touched.
 */
export function endForsakenPrograms(): number {
  return killForsaken();
}

async function converse(
  child: UciProcess,
  { position, nodes, budgetMs }: UciQuestion,
): Promise<Result<SecondOpinion, UciReason>> {
  const stopAt = setTimeout(() => child.send('stop'), budgetMs);
  try {
    child.send('uci');
    const greeting = await linesUntil(child, /^uciok\b/, { stage: 'uci', budgetMs });
    if (!greeting.ok) return greeting;
    child.send('isready');
    const ready = await linesUntil(child, /^readyok\b/, { stage: 'isready', budgetMs });
    if (!ready.ok) return ready;
    child.send('ucinewgame');
    child.send(`position fen ${writeFen(position)}`);
    child.send(`go nodes ${nodes}`);
    const answer = await linesUntil(child, /^bestmove\b/, { stage: 'go', budgetMs });
    if (!answer.ok) return answer;
    return opinionFrom(position, answer.value, nameFrom(greeting.value));
  } finally {
    clearTimeout(stopAt);
  }
}

/** The lines up to and with the one that ends the stage; of `info` lines only the last is kept. */
async function linesUntil(
  child: UciProcess,
  end: RegExp,
  { stage, budgetMs }: { readonly stage: UciStage; readonly budgetMs: number },
): Promise<Result<string[], UciReason>> {
  const kept = new Map<string, string>();
  for (;;) {
    const event = await child.next();
    switch (event.kind) {
      case 'line':
        if (end.test(event.text)) return ok([...kept.values(), event.text]);
        if (/^id name /.test(event.text)) kept.set('name', event.text);
        // Lines beyond the first are other moves; bounds are no values.
        if (
          /^info .*\bscore (cp|mate) /.test(event.text) &&
          !/ multipv ([2-9]|1\d)| (upper|lower)bound\b/.test(event.text)
        ) {
          kept.set('info', event.text);
        }
        break;
      case 'late':
        return refuse({ code: 'no-answer', stage, budgetMs });
      case 'ended':
        return refuse({ code: 'ended', stage, status: event.status });
      case 'failed':
        return refuse({ code: 'cannot-start', why: event.why });
      case 'flood':
        return refuse({ code: 'too-much-output', stage });
    }
  }
}

function nameFrom(lines: readonly string[]): string {
  const line = lines.find((one) => one.startsWith('id name ')) ?? '';
  return line.slice(8, 108).trim();
}

function opinionFrom(
  position: Position,
  lines: readonly string[],
  name: string,
): Result<SecondOpinion, UciReason> {
  const said = lines.at(-1)?.split(/\s+/)[1] ?? '';
  const move = findUci(position, said);
  if (move === null) return refuse({ code: 'illegal-move', found: said.slice(0, 40) });
  const info = lines.find((line) => line.startsWith('info ')) ?? '';
  const line = / pv (.*)$/.exec(info)?.[1]?.trim().split(/\s+/) ?? [];
  const odd = firstIllegal(position, line);
  if (odd !== null) return refuse({ code: 'illegal-line', found: odd.slice(0, 40) });
  // A line that begins with another move belongs to an earlier thought.
  const isItsOwn = line[0] === said;
  const number = (pattern: RegExp): number | null => {
    const text = pattern.exec(info)?.[1];
    return text === undefined ? null : Number(text);
  };
  return ok({
    name,
    move: said,
    line: isItsOwn ? line : [],
    depth: number(/ depth (\d{1,4})\b/),
    centipawns: isItsOwn ? number(/ score cp (-?\d{1,6})\b/) : null,
    mateIn: isItsOwn ? number(/ score mate (-?\d{1,4})\b/) : null,
  });
}

function firstIllegal(start: Position, line: readonly string[]): string | null {
  let position = start;
  for (const uci of line) {
    const next = playUci(position, uci);
    if (next === null) return uci;
    position = next;
  }
  return null;
}
