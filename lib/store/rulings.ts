// The host's rulings (rule V8): on a move in a position, or on what a text meant (rule R6).

import type { BookKey, Ruling } from '#lib/book/book-row.ts';
import type { Tx } from './client.ts';
import { oneOf } from './one-of.ts';

/** Verdict rulings in force. */
export async function loadRulings(tx: Tx, puzzleId: number): Promise<Ruling[]> {
  const rows = await tx.ruling.findMany({
    where: { puzzleId, kind: 'verdict', supersededAt: null },
    orderBy: { id: 'asc' },
  });
  return rows.map((row) => ({
    position: row.position ?? '',
    movesLeft: row.movesLeft,
    move: row.move ?? '',
    verdict: oneOf(['holds', 'slips'], row.verdict ?? ''),
    reason: row.reason,
  }));
}

/** Reading rulings in force: hash of the text -> line that was meant. */
export async function loadReadingRulings(tx: Tx, puzzleId: number): Promise<Map<string, readonly string[]>> {
  const rows = await tx.ruling.findMany({ where: { puzzleId, kind: 'reading', supersededAt: null } });
  return new Map(rows.map((row) => [row.textHash ?? '', row.meant]));
}

/** Rules on a move in a position; a former ruling on it is superseded. Gives the number of the ruling. */
export async function saveVerdictRuling(
  tx: Tx,
  puzzleId: number,
  ruling: BookKey & { verdict: 'holds' | 'slips'; reason: string; memberId: number | null },
): Promise<number> {
  const { position, movesLeft, move, verdict, reason, memberId } = ruling;
  await tx.$executeRaw`
    update ruling set superseded_at = clock_timestamp()
    where puzzle_id = ${puzzleId} and kind = 'verdict' and superseded_at is null
      and position = ${position} and moves_left is not distinct from ${movesLeft}::int and move = ${move}`;
  const row = await tx.ruling.create({
    data: { puzzleId, kind: 'verdict', position, movesLeft, move, verdict, reason, memberId },
  });
  return row.id;
}

/** Rules on what a text meant; a former ruling on it is superseded. Gives the number of the ruling. */
export async function saveReadingRuling(
  tx: Tx,
  puzzleId: number,
  ruling: { textHash: string; meant: readonly string[]; reason: string; memberId: number },
): Promise<number> {
  await tx.$executeRaw`
    update ruling set superseded_at = clock_timestamp()
    where puzzle_id = ${puzzleId} and kind = 'reading' and superseded_at is null and text_hash = ${ruling.textHash}`;
  const row = await tx.ruling.create({
    data: { puzzleId, kind: 'reading', ...ruling, meant: [...ruling.meant] },
  });
  return row.id;
}
