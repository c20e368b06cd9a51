// What does a puzzle file ask for? JSON in, terms out; every refusal names the field and what belongs there.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { fenSentence } from '#lib/words/rules-sentences.ts';
import { DEFAULT_TERMS, type PuzzleTerms, type Task } from './terms.ts';

/** Why a puzzle file is refused. */
export interface PuzzleFileReason {
  /** The field at fault, or `file` for the whole. */
  readonly field: string;
  readonly code:
    | 'not-an-object'
    | 'missing'
    | 'unknown'
    | 'wrong'
    | 'game-over'
    | 'bounds-crossed'
    | 'no-end';
  /** What would have been right, in plain English. */
  readonly expected: string;
  /** The value found, cut short; null where there is none. */
  readonly found: string | null;
}

/** The longest mate that may be asked for. */
const MOST_MOVES = 20;
const MOST_LINES = 50;
const MOST_CHARACTERS = 4000;
const MOST_NODES = 10_000_000_000;

type Fields = Readonly<Record<string, unknown>>;
type Read<T> = Result<T, PuzzleFileReason>;

const KNOWN = [
  'fen',
  'task',
  'published',
  'scheme',
  'winBound',
  'slipBound',
  'drawBound',
  'drawSlipBound',
  'anyDefence',
  'mateWritten',
  'solverMoves',
  'strict',
  'proofNodes',
  'budgetNodes',
];

/**
 * Terms from the JSON of a puzzle file: `{"fen": "...", "task": "mate in 3" | "win" | "draw", ...}`. Only
 * `fen` and `task` are required; `draw` also needs `published` or `solverMoves` (rule O1). The position must
 * be legal and not over. Whether published lines can be read and are right is asked later (rule V9).
 */
export function parsePuzzleFile(json: unknown): Read<PuzzleTerms> {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    return refuse({
      field: 'file',
      code: 'not-an-object',
      expected: 'a JSON object with fen and task',
      found: show(json),
    });
  }
  const fields: Fields = { ...json };
  const stranger = Object.keys(fields).find((name) => !KNOWN.includes(name));
  if (stranger !== undefined) {
    return refuse({
      field: stranger,
      code: 'unknown',
      expected: `one of ${KNOWN.join(', ')}`,
      found: stranger,
    });
  }
  const fen = readFen(fields);
  if (!fen.ok) return fen;
  const task = readTask(fields);
  if (!task.ok) return task;
  const rest = readRest(fields);
  if (!rest.ok) return rest;
  return checkTogether({ fen: fen.value, task: task.value, ...rest.value });
}

function readFen(fields: Fields): Read<string> {
  const { fen } = fields;
  const expected = 'a legal position in FEN, such as "7k/8/5K2/8/8/8/6Q1/8 w - - 0 1"';
  if (fen === undefined) return refuse({ field: 'fen', code: 'missing', expected, found: null });
  if (typeof fen !== 'string') return refuse({ field: 'fen', code: 'wrong', expected, found: show(fen) });
  const position = parseFen(fen.trim());
  if (!position.ok) {
    const why = `${expected} (${fenSentence(position.reason, 'en')})`;
    return refuse({ field: 'fen', code: 'wrong', expected: why, found: show(fen) });
  }
  if (legalMoves(position.value).length === 0) {
    return refuse({
      field: 'fen',
      code: 'game-over',
      expected: 'a position in which the side to move can move',
      found: show(fen),
    });
  }
  return ok(fen.trim());
}

function readTask(fields: Fields): Read<Task> {
  const { task } = fields;
  const expected = `"mate in N" (N from 1 to ${MOST_MOVES}), "win" or "draw"`;
  if (task === undefined) return refuse({ field: 'task', code: 'missing', expected, found: null });
  if (task === 'win' || task === 'draw') return ok({ kind: task });
  const moves = typeof task === 'string' ? Number(/^mate in (\d{1,2})$/.exec(task)?.[1]) : Number.NaN;
  if (moves >= 1 && moves <= MOST_MOVES) return ok({ kind: 'mate', moves });
  return refuse({ field: 'task', code: 'wrong', expected, found: show(task) });
}

type Rest = Omit<PuzzleTerms, 'fen' | 'task'>;

function readRest(fields: Fields): Read<Rest> {
  const terms: { -readonly [K in keyof Rest]: Rest[K] } = { ...DEFAULT_TERMS };
  if (fields.published !== undefined) {
    const lines = readLines(fields.published);
    if (!lines.ok) return lines;
    terms.published = lines.value;
  }
  if (fields.scheme !== undefined) {
    const { scheme } = fields;
    if (scheme !== 'full-line' && scheme !== 'key-move') {
      return refuse({
        field: 'scheme',
        code: 'wrong',
        expected: '"full-line" or "key-move"',
        found: show(scheme),
      });
    }
    terms.scheme = scheme;
  }
  for (const name of ['winBound', 'slipBound', 'drawBound', 'drawSlipBound'] as const) {
    const bound = readNumber(fields, name, {
      from: -10_000,
      to: 10_000,
      what: "centipawns from the solver's side",
    });
    if (!bound.ok) return bound;
    terms[name] = bound.value ?? terms[name];
  }
  for (const name of ['proofNodes', 'budgetNodes'] as const) {
    const nodes = readNumber(fields, name, { from: 1, to: MOST_NODES, what: 'nodes' });
    if (!nodes.ok) return nodes;
    terms[name] = nodes.value ?? terms[name];
  }
  const pinned = readNumber(fields, 'solverMoves', { from: 1, to: 100, what: 'good solver moves' });
  if (!pinned.ok) return pinned;
  terms.solverMoves = pinned.value;
  for (const [name, term] of [
    ['anyDefence', 'anyDefence'],
    ['mateWritten', 'mateWritten'],
    ['strict', 'isStrict'],
  ] as const) {
    const value = fields[name];
    if (value === undefined) continue;
    if (typeof value !== 'boolean')
      return refuse({ field: name, code: 'wrong', expected: 'true or false', found: show(value) });
    terms[term] = value;
  }
  return ok(terms);
}

function readLines(published: unknown): Read<readonly string[]> {
  const expected = `a list of at most ${MOST_LINES} lines of moves, such as ["1.Ra6 bxa6 2.b7#"]`;
  if (!Array.isArray(published) || published.length > MOST_LINES) {
    return refuse({ field: 'published', code: 'wrong', expected, found: show(published) });
  }
  const lines: string[] = [];
  for (const line of published) {
    if (typeof line !== 'string' || line.trim() === '' || line.length > MOST_CHARACTERS) {
      return refuse({ field: 'published', code: 'wrong', expected, found: show(line) });
    }
    lines.push(line);
  }
  return ok(lines);
}

function readNumber(
  fields: Fields,
  name: string,
  { from, to, what }: { readonly from: number; readonly to: number; readonly what: string },
): Read<number | null> {
  const value = fields[name];
  if (value === undefined || (value === null && name === 'solverMoves')) return ok(null);
  if (typeof value === 'number' && Number.isInteger(value) && value >= from && value <= to) return ok(value);
  const expected = `a whole number of ${what} from ${from} to ${to}`;
  return refuse({ field: name, code: 'wrong', expected, found: show(value) });
}

function checkTogether(terms: PuzzleTerms): Read<PuzzleTerms> {
  for (const [hold, slip] of [
    ['winBound', 'slipBound'],
    ['drawBound', 'drawSlipBound'],
  ] as const) {
    if (terms[slip] < terms[hold]) continue;
    const expected = `less than ${hold}, which is ${terms[hold]}`;
    return refuse({ field: slip, code: 'bounds-crossed', expected, found: String(terms[slip]) });
  }
  if (terms.task.kind === 'draw' && terms.published.length === 0 && terms.solverMoves === null) {
    return refuse({
      field: 'published',
      code: 'no-end',
      expected: 'published lines, or solverMoves, for a draw',
      found: null,
    });
  }
  if (terms.task.kind === 'mate' && terms.solverMoves !== null) {
    const expected = 'no number here: a mate in N has its end already';
    return refuse({ field: 'solverMoves', code: 'wrong', expected, found: String(terms.solverMoves) });
  }
  return ok(terms);
}

function show(value: unknown): string {
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 80 ? `${text.slice(0, 80)}…` : text;
}
