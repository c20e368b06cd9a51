// How far a verification has come; written by the worker, watched by the desk.

import type { Tx } from './client.ts';

/** The stages in which verification reports. */
export interface ProgressRecord {
  readonly state: string;
  readonly stage: string | null;
  readonly done: number;
  readonly total: number;
  readonly nodes: number;
  readonly verdicts: number;
  readonly failure: string | null;
  readonly startedAt: Date | null;
  readonly updatedAt: Date;
  readonly finishedAt: Date | null;
}

/** What the host watches; null where nothing was ever asked. */
export async function loadProgress(tx: Tx, puzzleId: number): Promise<ProgressRecord | null> {
  const row = await tx.progress.findUnique({ where: { puzzleId } });
  if (row === null) return null;
  const { puzzleId: _, ...rest } = row;
  return { ...rest, nodes: Number(row.nodes) };
}

/** Marks the beginning: waiting, or running. */
export async function beginProgress(tx: Tx, puzzleId: number, state: 'waiting' | 'running'): Promise<void> {
  const fresh = {
    state,
    stage: null,
    done: 0,
    total: 0,
    nodes: 0,
    verdicts: 0,
    failure: null,
    finishedAt: null,
  };
  await tx.progress.upsert({
    where: { puzzleId },
    create: { puzzleId, ...fresh },
    update: fresh,
  });
  await tx.$executeRaw`
    update progress set updated_at = clock_timestamp(),
      started_at = case when ${state} = 'running' then clock_timestamp() end where puzzle_id = ${puzzleId}`;
}

/** Numbers from the running work. */
export async function saveProgress(
  tx: Tx,
  puzzleId: number,
  step: { stage: string; done: number; total: number; nodes: number; verdicts: number },
): Promise<void> {
  await tx.$executeRaw`
    update progress set stage = ${step.stage}, done = ${step.done}, total = ${step.total},
      nodes = ${step.nodes}::bigint, verdicts = ${step.verdicts}, updated_at = clock_timestamp()
    where puzzle_id = ${puzzleId}`;
}

/** The end, good or bad; the failure is told to the host. */
export async function endProgress(tx: Tx, puzzleId: number, failure: string | null): Promise<void> {
  await tx.$executeRaw`
    update progress set state = ${failure === null ? 'done' : 'failed'}, failure = ${failure},
      updated_at = clock_timestamp(), finished_at = clock_timestamp()
    where puzzle_id = ${puzzleId}`;
}
