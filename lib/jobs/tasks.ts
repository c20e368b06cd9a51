// Which job is done by whom. Payloads are read through their shapes; a handler is a few lines.

import type { Task, TaskList } from 'graphile-worker';
import type { z } from 'zod';
import { JOBS } from '#lib/queue/job-names.ts';
import { closeByTime } from '#lib/usecases/puzzles/close-puzzle.ts';

function task<T>(shape: z.ZodType<T>, run: (payload: T) => Promise<unknown>): Task {
  return async (payload) => {
    await run(shape.parse(payload));
  };
}

export const TASKS: TaskList = {
  'close-puzzle': task(JOBS['close-puzzle'], ({ puzzleId }) => closeByTime(puzzleId)),
};
