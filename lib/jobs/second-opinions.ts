// The operator's own program, asked as long as it answers. After three failures in a row it is set aside:
// a program that hangs would hold up a job each time, and the host would read the same complaint.

import { config } from '#lib/machine/config.ts';
import { log } from '#lib/machine/log.ts';
import { askSecondOpinion } from '#lib/usecases/puzzles/ask-second-opinion.ts';

const MOST_FAILURES = 3;

/** Asks about one puzzle after the other; remembers failures until the worker starts anew. */
export function createSecondOpinions(): (puzzleId: number) => Promise<void> {
  let failures = 0;
  return async (puzzleId) => {
    const { uciProgram } = config();
    // Asked for while a program was named; where none is any more, there is nobody to ask.
    if (uciProgram === null) return;
    const program = failures < MOST_FAILURES ? uciProgram : null;
    const outcome = await askSecondOpinion({ puzzleId, program });
    if (outcome === 'answered') failures = 0;
    if (outcome !== 'failed') return;
    failures += 1;
    if (failures === MOST_FAILURES) log().error({ program }, 'the program is set aside: it failed too often');
  };
}
