// How does one reading do? Its main line with its branches, the best of them; a choice counts as the worse of the
// two (rule O4).

import type { Reading, ReadLine } from '#lib/reading/reading.ts';
import { bestOf, type Ranked, worstOf } from '../compare-marks.ts';
import { earnedBy } from './earned-by.ts';
import type { LineToWalk, Walk } from './walk.ts';
import type { WalkContext } from './walk-context.ts';
import { walkLine } from './walk-line.ts';

/** A line of a reading with what it earned. */
export interface Judged extends Ranked {
  readonly reading: Reading;
  readonly line: LineToWalk;
  readonly walk: Walk;
  readonly hasFoundBoth: boolean;
  /** Two moves for one place, and this is the worse (rule O4). */
  readonly isWorseOfTwo: boolean;
}

/** The line that a reading counts as, or null where verdicts are lacking and were asked for. */
export function judgeReading(context: WalkContext, reading: Reading): Judged | null {
  const main = judgeLine(context, reading, reading.line);
  const choices = reading.choices.map((choice) => ({ judged: judgeLine(context, reading, choice), choice }));
  if (main === null) return null;
  let best = main.outcome === 'solved' ? main : bestOf([main, ...judgeBranches(context, reading)]);
  for (const { judged, choice } of choices) {
    if (judged === null) return null;
    best = takeChoice(best, judged, { main, place: partingPlace(reading.line, choice) });
  }
  return best;
}

function judgeLine(context: WalkContext, reading: Reading, moves: ReadLine): Judged | null {
  const isMain = moves === reading.line;
  const line: LineToWalk = {
    line: moves,
    endsImpossible: isMain && reading.impossibleAt !== null,
    isSolverOnly: reading.isSolverOnly,
  };
  const walk = walkLine(context, line);
  if (walk.outcome === 'lacking') return null;
  return { ...earnedBy(context.facts, walk), reading, line, walk, hasFoundBoth: false, isWorseOfTwo: false };
}

// Branches use what the book has: one counts up to the first move that is not verified, as if it were cut off there
// (rule P3), and is no candidate where the book knows none of its own moves.
function judgeBranches(context: WalkContext, reading: Reading): Judged[] {
  const quiet: WalkContext = { ...context, isAsking: false };
  return reading.branches.flatMap((branch) => {
    const shared = partingPlace(reading.line, branch);
    let judged = judgeLine(quiet, reading, branch);
    while (judged?.walk.because === 'not-verified' && judged.walk.verdicts.length > shared) {
      judged = judgeLine(quiet, reading, branch.slice(0, judged.walk.used));
    }
    return judged === null || judged.walk.because === 'not-verified' ? [] : [judged];
  });
}

/** The solver move (from 0) at which a choice or a branch parts from the main line. */
function partingPlace(main: ReadLine, choice: ReadLine): number {
  let place = 0;
  for (const [at, move] of choice.entries()) {
    if (main[at]?.uci !== move.uci) break;
    if (move.by === 'solver') place += 1;
  }
  return place;
}

function takeChoice(
  best: Judged,
  choice: Judged,
  { main, place }: { readonly main: Judged; readonly place: number },
): Judged {
  const chosen = choice.walk.verdicts[place];
  const other = main.walk.verdicts[place];
  // The line was decided before the two moves part: neither of them counts.
  if (chosen === undefined && choice.walk.verdicts.length <= place && choice.outcome === main.outcome)
    return best;
  if (chosen?.verdict === 'holds' && other?.verdict === 'holds') {
    return { ...bestOf([best, choice]), hasFoundBoth: true };
  }
  const worst = worstOf([best, choice]);
  return worst.points < Math.max(best.points, choice.points) ? { ...worst, isWorseOfTwo: true } : worst;
}
