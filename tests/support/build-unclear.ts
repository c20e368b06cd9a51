// Healey's problem with a real book, but for moves that the engine is made to leave unclear.

import { createTree } from '#lib/book/position-tree.ts';
import { verifiedFen } from '#lib/book/question.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { appendBookRows, budgetsKey } from '#lib/store/books.ts';
import { db } from '#lib/store/client.ts';
import { buildPuzzle, buildShow } from './build-show.ts';
import { HEALEY } from './build-solution.ts';
import { verifyHere } from './engine-in-process.ts';

/** Marks by the moves before them which verdicts are taken as unclear: `['d1h1']`, `['d1h1 b5d7 g6b1']`. */
export async function buildUnclear(lines: readonly string[], { closes = 60 } = {}) {
  const show = await buildShow();
  const puzzle = await buildPuzzle(show, { terms: HEALEY, closes });
  const { puzzleId } = puzzle;
  await db().puzzle.update({ where: { id: puzzleId }, data: { engineVersion: ENGINE_VERSION } });
  const tree = createTree(HEALEY.fen);
  const first = tree
    .moves(tree.root)
    .map((move) => ({ fen: HEALEY.fen, position: tree.root.bookPosition, movesLeft: 3, move }));
  const unclear = lines.map((line) => {
    const moves = line.split(' ');
    const last = moves.pop() ?? '';
    let node = tree.root;
    for (const move of moves) node = tree.play(node, move) ?? node;
    const movesLeft = 3 - moves.length / 2;
    return { fen: verifiedFen(node.bookPosition), position: node.bookPosition, movesLeft, move: last };
  });
  const asked = [...first, ...unclear.filter((one) => one.movesLeft < 3)];
  const isUnclear = (row: { position: string; move: string }) =>
    unclear.some((one) => one.position === row.position && one.move === row.move);
  const rows = (await verifyHere({ terms: HEALEY, lacking: asked })).map((row) =>
    isUnclear(row) ? { ...row, verdict: 'unclear' as const, evidence: { kind: 'budget' as const } } : row,
  );
  await appendBookRows(db(), puzzleId, rows, budgetsKey(HEALEY));
  return { ...show, ...puzzle, terms: HEALEY };
}

/** The outcomes in force, by the order of the answers. */
export async function outcomesOf(puzzleId: number): Promise<string[]> {
  const marks = await db().mark.findMany({
    where: { puzzleId, isCurrent: true },
    orderBy: { answerId: 'asc' },
  });
  return marks.map((mark) => mark.outcome);
}

/** The close, now. */
export async function closeNow(puzzleId: number): Promise<void> {
  await db().$executeRaw`update puzzle set closes_at = clock_timestamp() where id = ${puzzleId}`;
}
