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

/**
 * The next position to verify with all moves asked for there under one revision of the terms; null where nothing
 * is wanted but the rows numbered in `without`.
 */
export async function nextWants(
  tx: Tx,
  puzzleId: number,
  without: readonly number[] = [],
): Promise<Wanted[] | null> {
  const open = { puzzleId, id: { notIn: [...without] } };
  const first = await tx.want.findFirst({ where: open, orderBy: [{ turn: 'asc' }, { id: 'asc' }] });
  if (first === null) return null;
  const { position, movesLeft, revision } = first;
  const rows = await tx.want.findMany({
    where: { ...open, position, movesLeft, revision },
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

/** So often a verdict is tried to be found. */
const MOST_TRIES = 3;

/**
 * Notes that what was wanted could not be verified, and gives the numbers of its rows. At the third time it is
 * given up: its rows go, and `mostAsked` is noted of the answers that waited for it, so that they ask no more.
 */
export async function noteFailedWant(
  tx: Tx,
  puzzleId: number,
  { want, mostAsked }: { readonly want: Wanted; readonly mostAsked: number },
): Promise<{ readonly ids: number[]; readonly isGivenUp: boolean }> {
  const { position, movesLeft, move, revision } = want;
  const where = { puzzleId, position, movesLeft, move, revision };
  await tx.want.updateMany({ where, data: { tries: { increment: 1 } } });
  const rows = await tx.want.findMany({ where });
  const isGivenUp = rows.some(({ tries }) => tries >= MOST_TRIES);
  if (isGivenUp) {
    const answers = rows.flatMap(({ answerId }) => answerId ?? []);
    await tx.answer.updateMany({ where: { id: { in: answers } }, data: { asked: mostAsked } });
    await tx.want.deleteMany({ where });
  }
  return { ids: rows.map(({ id }) => id), isGivenUp };
}

/** Gives up what is wanted under a revision: answers that waited for it ask no more and go back on the work list. */
export async function giveUpWants(
  tx: Tx,
  puzzleId: number,
  { revision, mostAsked }: { readonly revision: number; readonly mostAsked: number },
): Promise<void> {
  await tx.$executeRaw`
    update answer set asked = ${mostAsked} where id in (
      select answer_id from want where puzzle_id = ${puzzleId} and revision = ${revision})`;
  await tx.want.deleteMany({ where: { puzzleId, revision } });
  await strikeWants(tx, puzzleId, []);
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
