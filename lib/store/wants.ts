// What the book is asked for: verdicts that an answer or a host lacks. Round robin by answer, hosts first.

import type { Wanted } from '#lib/book/book-row.ts';
import type { Tx } from './client.ts';

/** Asks for verdicts on behalf of an answer (null: the host). Already asked ones are not doubled. */
export async function addWants(
  tx: Tx,
  puzzleId: number,
  answerId: number | null,
  lacking: readonly Wanted[],
  firstTurn: number,
): Promise<void> {
  await tx.want.createMany({
    skipDuplicates: true,
    data: lacking.map((one, index) => ({
      puzzleId,
      answerId,
      fen: one.fen,
      position: one.position,
      movesLeft: one.movesLeft,
      move: one.move,
      revision: one.revision,
      turn: answerId === null ? -1 : firstTurn + index,
    })),
  });
}

/** The next position to verify with all moves asked for there under one revision of the terms; null where nothing is wanted. */
export async function nextWants(tx: Tx, puzzleId: number): Promise<Wanted[] | null> {
  const first = await tx.want.findFirst({ where: { puzzleId }, orderBy: [{ turn: 'asc' }, { id: 'asc' }] });
  if (first === null) return null;
  const rows = await tx.want.findMany({
    where: { puzzleId, position: first.position, movesLeft: first.movesLeft, revision: first.revision },
    distinct: ['move'],
    orderBy: { move: 'asc' },
  });
  return rows.map(({ fen, position, movesLeft, move, revision }) => ({
    fen,
    position,
    movesLeft,
    move,
    revision,
  }));
}

/**
 * Strikes out what the book now has, and puts every answer that waits for nothing more back on the
 * work list. Gives how many answers that were.
 */
export async function strikeWants(tx: Tx, puzzleId: number, found: readonly Wanted[]): Promise<number> {
  for (const { position, movesLeft, move, revision } of found)
    await tx.want.deleteMany({ where: { puzzleId, position, movesLeft, move, revision } });
  return tx.$executeRaw`
    update answer set work = 'to-mark'
    where puzzle_id = ${puzzleId} and work = 'lacking'
      and not exists (select from want where want.answer_id = answer.id)`;
}

/** How many verdicts a puzzle's answers wait for. */
export function countWants(tx: Tx, puzzleId: number): Promise<number> {
  return tx.want.count({ where: { puzzleId } });
}

/** Whether verdicts of a puzzle are wanted in nobody's name. */
export async function hasHostsWants(tx: Tx, puzzleId: number): Promise<boolean> {
  return (await tx.want.findFirst({ where: { puzzleId, answerId: null }, select: { id: true } })) !== null;
}

/** Puzzles with something wanted. */
export async function listPuzzlesWithWants(tx: Tx): Promise<number[]> {
  const rows = await tx.want.findMany({ distinct: ['puzzleId'], select: { puzzleId: true } });
  return rows.map((row) => row.puzzleId);
}
