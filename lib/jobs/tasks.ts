// Which job is done by whom. Payloads are read through their shapes; a handler is a few lines.

import type { Task, TaskList } from 'graphile-worker';
import type { z } from 'zod';
import type { EngineThreads } from '#lib/machine/engine-threads.ts';
import { JOBS } from '#lib/queue/job-names.ts';
import { takeInComments } from '#lib/usecases/answers/import-comments.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { runRegrade } from '#lib/usecases/answers/run-regrade.ts';
import { closeByTime } from '#lib/usecases/puzzles/close-puzzle.ts';
import { extendBook } from '#lib/usecases/puzzles/extend-book.ts';
import { makeSample } from '#lib/usecases/puzzles/make-sample.ts';
import { verifyAmendment } from '#lib/usecases/puzzles/verify-amendment.ts';
import { verifyPuzzle } from '#lib/usecases/puzzles/verify-puzzle.ts';
import { createSecondOpinions } from './second-opinions.ts';
import { isEndOfThreads, verifyInThreads } from './verify-in-threads.ts';

function task<T>(shape: z.ZodType<T>, run: (payload: T) => Promise<unknown>): Task {
  return async (payload) => {
    await run(shape.parse(payload));
  };
}

/** The tasks of a worker with these engine threads. */
export function createTasks(threads: EngineThreads): TaskList {
  const askAbout = createSecondOpinions();
  return {
    'mark-answers': task(JOBS['mark-answers'], markAnswers),
    'extend-book': task(JOBS['extend-book'], ({ puzzleId }) =>
      extendBook({
        puzzleId,
        verify: verifyInThreads(threads, { for: 'viewer', answerId: `puzzle ${puzzleId}` }),
        isItsEnd: isEndOfThreads,
      }),
    ),
    'verify-puzzle': task(JOBS['verify-puzzle'], ({ puzzleId }) =>
      verifyPuzzle({ puzzleId, verify: verifyInThreads(threads, { for: 'host' }) }),
    ),
    'verify-amendment': task(JOBS['verify-amendment'], ({ puzzleId }) =>
      verifyAmendment({ puzzleId, verify: verifyInThreads(threads, { for: 'host' }) }),
    ),
    'second-opinion': task(JOBS['second-opinion'], ({ puzzleId }) => askAbout(puzzleId)),
    'import-comments': task(JOBS['import-comments'], ({ importId }) => takeInComments(importId)),
    'make-sample': task(JOBS['make-sample'], ({ memberId }) =>
      makeSample({ memberId, verify: verifyInThreads(threads, { for: 'host' }) }),
    ),
    regrade: task(JOBS.regrade, ({ regradeId }) => runRegrade(regradeId)),
    'close-puzzle': task(JOBS['close-puzzle'], ({ puzzleId }) => closeByTime(puzzleId)),
  };
}
