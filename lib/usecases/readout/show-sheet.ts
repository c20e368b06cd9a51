// The read-out sheet of a puzzle: facts are gathered here, order and wording are the core's.

import type { BookRow } from '#lib/book/book-row.ts';
import { createBook } from '#lib/book/solution-book.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { findLookAlike } from '#lib/people/names.ts';
import type { SheetName } from '#lib/readout/order-names.ts';
import {
  type Sheet,
  type SheetFacts,
  type SheetLength,
  sheetText,
  writeSheet,
} from '#lib/readout/write-sheet.ts';
import type { Uci } from '#lib/rules/move.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { bookPosition } from '#lib/rules/position-key.ts';
import { climbLadder } from '#lib/standings/ladder.ts';
import type { Turn } from '#lib/standings/runs.ts';
import { thingsToSay } from '#lib/standings/things-to-say.ts';
import { budgetsKey, loadBookRows, loadProof } from '#lib/store/books.ts';
import { db } from '#lib/store/client.ts';
import { listWronged, type Wronged } from '#lib/store/put-right.ts';
import { loadPuzzle, loadTerms, type PuzzleRecord } from '#lib/store/puzzles.ts';
import {
  countPeople,
  isSheetRead,
  listLastSheets,
  listPastMarks,
  listPuzzlesUpTo,
  listSolversOnSheet,
  type SolverOnSheet,
} from '#lib/store/sheet-facts.ts';
import { loadShow } from '#lib/store/shows.ts';
import { countFirstMoves } from '#lib/store/solution-facts.ts';
import type { Locale } from '#lib/words/locale.ts';
import { loadRevisionsHere } from '../answers/seen-revisions.ts';
import { judgeFirstMove } from '../puzzles/first-moves.ts';
import { solutionLines } from '../puzzles/solution-lines.ts';

/** The sheet with what stands around it. */
export interface ShownSheet {
  readonly sheet: Sheet;
  readonly text: string;
  readonly fen: string;
  readonly key: Uci;
  readonly isRead: boolean;
}

/** Why there is no sheet. */
export type SheetReason = { readonly code: 'unknown-puzzle' } | { readonly code: 'no-answer-known' };

const MOST_NAMES = 2000;
const SHEETS_LOOKED_BACK = 4;

/** Writes the sheet of a puzzle for a length in seconds and a pace in words a minute. */
export async function showSheet(asked: {
  readonly puzzleId: number;
  readonly locale: Locale;
  readonly length: SheetLength;
  readonly wordsAMinute: number;
}): Promise<Result<ShownSheet, SheetReason>> {
  const record = await loadPuzzle(db(), { id: asked.puzzleId });
  if (record === null) return refuse({ code: 'unknown-puzzle' });
  const facts = await gatherFacts(record);
  const key = facts?.line[0];
  if (facts === null || key === undefined) return refuse({ code: 'no-answer-known' });
  const sheet = writeSheet(facts, asked);
  const isRead = await isSheetRead(db(), record.id);
  return ok({ sheet, text: sheetText(sheet), fen: record.terms.fen, key, isRead });
}

async function gatherFacts(record: PuzzleRecord): Promise<SheetFacts | null> {
  const start = parseFen(record.terms.fen);
  if (!start.ok || record.engineVersion === null) return null;
  const tx = db();
  const version = { engineVersion: record.engineVersion, budgets: budgetsKey(record.terms) };
  const book = createBook((await loadBookRows(tx, record.id, version)).rows);
  const movesLeft = record.task.kind === 'mate' ? record.task.moves : null;
  const place = bookPosition(start.value);
  const keys = book.rowsAt(place, movesLeft).filter((row) => row.verdict === 'holds');
  const { published } = await loadTerms(tx, record);
  const proof = await loadProof(tx, record.id, { position: place, movesLeft, move: keys[0]?.move ?? '' });
  const moves = keys.map((row) => row.move);
  const lines = solutionLines({ start: start.value, published, keys: moves, book, movesLeft, proof });
  const line = mainLine(lines.map((one) => one.moves));
  const here = await loadRevisionsHere(tx, record);
  const firstMoves = await countFirstMoves(tx, record.id, here);
  const judged = firstMoves.flatMap(({ move, count }) => {
    const one = move === null ? null : judgeFirstMove(book, { start: start.value, movesLeft, move });
    return one === null ? [] : [{ ...one, count }];
  });
  const trap = judged.find((one) => one.verdict === 'slips');
  const otherWays = judged.filter((one) => one.verdict === 'holds' && one.move !== line[0]);
  return {
    fen: record.terms.fen,
    task: record.task,
    line,
    ...(await countPeople(tx, record.id, here)),
    trap: trap === undefined ? null : { move: trap.move, people: trap.count, by: trap.reply },
    otherWays: otherWays.map((one) => ({ move: one.move, people: one.count })),
    names: await gatherNames(record, here, keys.find((row) => row.move === line[0]) ?? null),
  };
}

// The published line is said as it stands; where it is the key alone, the proof's first variation
// tells how it goes on.
function mainLine(lines: readonly (readonly Uci[])[]): readonly Uci[] {
  const first = lines[0] ?? [];
  if (first.length > 1) return first;
  return lines.find((line) => line.length > 1 && (first.length === 0 || line[0] === first[0])) ?? first;
}

// Who solved the position before an amendment is named like everybody, and not counted; what was played there is no
// thing to say about this one (rule A6).
function withoutMoves(solver: SolverOnSheet): SolverOnSheet {
  const flags = solver.flags.filter((flag) => flag !== 'other-way' && flag !== 'found-both');
  return { ...solver, flags, reading: null };
}

async function gatherNames(
  record: PuzzleRecord,
  here: readonly number[],
  key: BookRow | null,
): Promise<SheetName[]> {
  const tx = db();
  const listed = await listSolversOnSheet(tx, record.id, MOST_NAMES);
  const solvers = listed.map((one) => (here.includes(one.revision) ? one : withoutMoves(one)));
  const puzzles = await listPuzzlesUpTo(tx, record.showId, record.id);
  const solverIds = solvers.map((one) => one.solverId);
  const past = await listPastMarks(
    tx,
    puzzles.map((one) => one.id),
    solverIds,
  );
  const sheets = await listLastSheets(tx, record.showId, record.id, SHEETS_LOOKED_BACK);
  const target = (await loadShow(tx, record.showId))?.ladderTarget ?? null;
  const did = new Map(past.map((one) => [`${one.solverId} ${one.puzzleId}`, one]));
  const finders = solvers.filter((one) => one.flags.includes('other-way')).length;
  const puzzleIds = puzzles.map((one) => one.id);
  const wronged = await listWronged(tx, puzzleIds, SHEETS_LOOKED_BACK);
  const isWronged = new Set(wronged.map((one) => one.solverId));
  const seen: string[] = [];
  const named = solvers.map((solver): SheetName => {
    const marks = puzzles.map((puzzle) => ({ ...puzzle, mark: did.get(`${solver.solverId} ${puzzle.id}`) }));
    const points = marks.map((one) => (one.isVoid ? 0 : (one.mark?.points ?? 0)));
    const tops = target === null ? [] : climbLadder(points, target).tops;
    const ago = sheets.findIndex((ids) => ids.includes(solver.solverId));
    const looksLike = findLookAlike(solver.name, seen);
    seen.push(solver.name);
    const things = thingsToSay({
      history: marks.map((one): Turn => turnOf(one.isVoid, one.mark?.outcome)),
      wasWronged: isWronged.has(solver.solverId),
      toppedLadder: tops.includes(puzzles.length - 1),
      foundOtherWay: solver.flags.includes('other-way'),
      otherWayFinders: finders,
      foundBoth: solver.flags.includes('found-both'),
      sawBestDefence: sawBestDefence(solver, key),
      goodWords: null,
      isPraiseBarred: solver.flags.includes('edited-unseen'),
    });
    const { solverId, name } = solver;
    return { solverId, name, things, readOutAgo: ago < 0 ? null : ago + 1, looksLike };
  });
  const others = wronged.filter((one) => !solverIds.includes(one.solverId));
  return [...named, ...others.flatMap((one) => onlyPutRight(one, seen))];
}

// Wronged by an earlier sheet, and did not solve this one: the correction is said all the same.
function onlyPutRight({ solverId, name }: Wronged, seen: readonly string[]): SheetName[] {
  if (name === null) return [];
  const looksLike = findLookAlike(name, seen);
  return [{ solverId, name, things: [{ code: 'put-right' }], readOutAgo: null, looksLike, isSolver: false }];
}

function turnOf(isVoid: boolean, outcome: string | undefined): Turn {
  if (isVoid) return 'void';
  if (outcome === undefined || outcome === 'chatter') return 'not-answered';
  return outcome === 'solved' ? 'solved' : 'not-solved';
}

// Worth a word only where there was something to see: fewer replies last longest than there are.
function sawBestDefence(solver: SolverOnSheet, key: BookRow | null): boolean {
  const [first, second] = solver.reading ?? [];
  if (key === null || first?.uci !== key.move || second?.by !== 'defender') return false;
  return key.adequate.length < key.replies.length && key.adequate.includes(second.uci);
}
