// The moments of a puzzle's life, written by the database's clock.

import type { Tx } from './client.ts';
import type { Prisma } from './generated/client.ts';

/** What verification found. */
export interface Verified {
  readonly claim: 'true' | 'false' | 'unclear';
  readonly report: Prisma.InputJsonValue;
  readonly engineVersion: string;
}

/** Keeps the outcome of a verification. */
export async function saveVerified(tx: Tx, puzzleId: number, found: Verified): Promise<void> {
  await tx.puzzle.update({
    where: { id: puzzleId },
    data: { claim: found.claim, report: found.report, engineVersion: found.engineVersion },
  });
  await tx.$executeRaw`update puzzle set verified_at = clock_timestamp() where id = ${puzzleId}`;
}

/** The same for a puzzle that is public, whose claim has to stand; false where it does not, and nothing is changed. */
export async function saveRenewed(tx: Tx, puzzleId: number, found: Verified): Promise<boolean> {
  const { claim, report, engineVersion } = found;
  const count = await tx.$executeRaw`
    update puzzle set claim = ${claim}, report = ${JSON.stringify(report)}::jsonb, engine_version = ${engineVersion},
      verified_at = clock_timestamp()
    where id = ${puzzleId} and (${claim} = 'true' or (${claim} = 'unclear' and claim_override is not null))`;
  return count > 0;
}

/** Keeps what another program thinks of the position, unless the puzzle has another one by now. */
export async function saveSecondOpinion(
  tx: Tx,
  { puzzleId, fen }: { readonly puzzleId: number; readonly fen: string },
  opinion: Prisma.InputJsonValue,
): Promise<void> {
  await tx.puzzle.updateMany({ where: { id: puzzleId, fen }, data: { secondOpinion: opinion } });
}

/** Publishes; the reason is kept where the claim is unclear. */
export async function savePublished(tx: Tx, puzzleId: number, overrideReason: string | null): Promise<void> {
  await tx.$executeRaw`
    update puzzle set claim_override = ${overrideReason}, published_at = clock_timestamp() where id = ${puzzleId}`;
}

/** Closes by hand: from this moment on answers are late. */
export async function saveClosedByHand(tx: Tx, puzzleId: number): Promise<void> {
  await tx.$executeRaw`
    update puzzle set closes_at = clock_timestamp(), closed_at = clock_timestamp() where id = ${puzzleId}`;
}

/** Notes that a close by time was carried out; false where somebody else has. */
export async function saveClosedByTime(tx: Tx, puzzleId: number): Promise<boolean> {
  const count = await tx.$executeRaw`
    update puzzle set closed_at = clock_timestamp()
    where id = ${puzzleId} and closed_at is null and published_at is not null and closes_at <= clock_timestamp()`;
  return count > 0;
}

/** Moves the close; it is carried out anew. */
export async function saveCloseMoved(tx: Tx, puzzleId: number, closesAt: Date): Promise<void> {
  await tx.puzzle.update({ where: { id: puzzleId }, data: { closesAt, closedAt: null } });
}

/** Puzzles whose close has come and was not carried out. */
export async function listDueToClose(tx: Tx): Promise<number[]> {
  const rows = await tx.$queryRaw<{ id: number }[]>`
    select id from puzzle
    where closed_at is null and published_at is not null and voided_at is null and closes_at <= clock_timestamp()`;
  return rows.map((row) => row.id);
}

/**
 * Whether the puzzle is revealed; the reveal is held off until the end of the transaction. Whoever writes marks
 * asks this first, so that no mark changes by itself behind a reveal (rule A7). Many may hold it at once.
 */
export async function holdReveal(tx: Tx, puzzleId: number): Promise<boolean> {
  await tx.$queryRaw`
    select 1 as done from pg_advisory_xact_lock_shared(hashtext('tailpiece.reveal'), ${puzzleId}::int)`;
  const rows = await tx.$queryRaw<{ revealed: boolean }[]>`
    select revealed_at is not null as revealed from puzzle where id = ${puzzleId}`;
  return rows[0]?.revealed ?? false;
}

/**
 * Waits for marks that are just being written and holds all further ones off until the end of the
 * transaction. For who changes what marks rest on: else a batch that began before a ruling would commit
 * after it and leave marks that do not know it. The first lock that a transaction takes.
 */
export async function holdMarking(tx: Tx, puzzleId: number): Promise<void> {
  await tx.$queryRaw`
    select 1 as done from pg_advisory_xact_lock(hashtext('tailpiece.reveal'), ${puzzleId}::int)`;
}

/**
 * Holds the close where it is until the end of the transaction: whoever is told "in time" stays so. Many may hold it
 * at once; asked before the answer is inserted, in a statement of its own, so that the insert sees the close as it is.
 */
export async function holdClose(tx: Tx, puzzleId: number): Promise<void> {
  await tx.$queryRaw`
    select 1 as done from pg_advisory_xact_lock_shared(hashtext('tailpiece.close'), ${puzzleId}::int)`;
}

/** Waits for answers that are just being inserted, and lets others wait until the end of the transaction. */
export async function holdSenders(tx: Tx, puzzleId: number): Promise<void> {
  await tx.$queryRaw`
    select 1 as done from pg_advisory_xact_lock(hashtext('tailpiece.close'), ${puzzleId}::int)`;
}

/** Shows the solution from now on; waits for marks that are just being written. */
export async function saveRevealed(tx: Tx, puzzleId: number): Promise<void> {
  await holdMarking(tx, puzzleId);
  await tx.$executeRaw`update puzzle set revealed_at = clock_timestamp() where id = ${puzzleId}`;
}

/** Declares the puzzle void (rule A6). */
export async function saveVoided(tx: Tx, puzzleId: number): Promise<void> {
  await tx.$executeRaw`update puzzle set voided_at = clock_timestamp() where id = ${puzzleId}`;
}
