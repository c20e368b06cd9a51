// What does the operator's own program think of the diagram? Asked after verification, kept beside the
// puzzle and never mixed with our verdicts; where it fails, the failure is what is kept.

import type { Opinion } from '#lib/book/explain-opinion.ts';
import { log } from '#lib/machine/log.ts';
import { askUciProgram } from '#lib/machine/uci-program.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { db } from '#lib/store/client.ts';
import { toJson } from '#lib/store/json.ts';
import { saveSecondOpinion } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';

/** The program's time for one diagram, in milliseconds, its start included. */
const BUDGET_MS = 20_000;

/** Asks the program at the path and keeps what it says; `budgetMs` is for tests. */
export async function askSecondOpinion(asked: {
  readonly puzzleId: number;
  readonly program: string;
  readonly budgetMs?: number;
}): Promise<void> {
  const { puzzleId, program, budgetMs = BUDGET_MS } = asked;
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  if (puzzle === null) return;
  const { fen, budgetNodes } = puzzle.terms;
  const position = parseFen(fen);
  if (!position.ok) throw new Error(`A puzzle holds no position: ${fen}`);
  const question = { position: position.value, nodes: budgetNodes, budgetMs };
  const answer = await askUciProgram({ path: program, args: [] }, question);
  if (!answer.ok) log().warn({ puzzleId, ...answer.reason }, 'the second opinion was not usable');
  const opinion: Opinion = answer.ok
    ? {
        v: 1,
        kind: 'move',
        // A foreign text: what cannot be shown cannot be stored either.
        name: answer.value.name.replace(/\p{C}/gu, ''),
        move: answer.value.move,
        depth: answer.value.depth,
        centipawns: answer.value.centipawns,
        mateIn: answer.value.mateIn,
      }
    : { v: 1, kind: 'none', fault: answer.reason.code };
  await saveSecondOpinion(db(), { puzzleId, fen }, toJson(opinion));
}
