// What the host watches: every number comes from the running work, written a few times a second.

import type { BookRow, Lacking } from '#lib/book/book-row.ts';
import type { EngineProgress } from '#lib/engine/verdict.ts';
import { sleep } from '#lib/machine/clock.ts';
import { log } from '#lib/machine/log.ts';
import { db } from '#lib/store/client.ts';
import { saveProgress } from '#lib/store/progress.ts';

const WRITE_EVERY_MS = 300;

/** Gathers numbers and writes them. */
export interface VerificationFollower {
  /** So many verdicts more are wanted. */
  expect(verdicts: number): void;
  /** Numbers of a job under way. */
  progressOf(job: readonly Lacking[]): (progress: EngineProgress) => void;
  /** Rows that are there; the job they come from is over. */
  found(rows: readonly BookRow[], job?: readonly Lacking[]): void;
  /** Writes the last numbers and stops. */
  end(): Promise<void>;
}

/** Follows the verification of a puzzle. */
export function followVerification(puzzleId: number): VerificationFollower {
  const running = new Map<readonly Lacking[], EngineProgress>();
  let stage: EngineProgress['stage'] = 'keys';
  let expected = 0;
  let verdicts = 0;
  let nodes = 0;
  let hasNews = true;
  let isOver = false;

  const write = async () => {
    if (!hasNews) return;
    hasNews = false;
    const inWork = [...running.values()].reduce((sum, one) => sum + one.nodes, 0);
    const step = { stage, done: verdicts, total: expected, nodes: Math.round(nodes + inWork), verdicts };
    try {
      await saveProgress(db(), puzzleId, step);
    } catch (error) {
      log().warn({ puzzleId, problem: String(error) }, 'progress was not written');
    }
  };
  const pulse = (async () => {
    while (!isOver) {
      await write();
      await sleep(WRITE_EVERY_MS);
    }
  })();

  return {
    expect(count) {
      expected += count;
      hasNews = true;
    },
    progressOf: (job) => (progress) => {
      running.set(job, progress);
      stage = progress.stage;
      hasNews = true;
    },
    found(rows, job) {
      if (job === undefined) expected += rows.length;
      else running.delete(job);
      verdicts += rows.length;
      nodes += rows.reduce((sum, row) => sum + row.nodes, 0);
      hasNews = true;
    },
    async end() {
      isOver = true;
      await pulse;
      await write();
    },
  };
}
