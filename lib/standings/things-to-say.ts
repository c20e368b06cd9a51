// What is there to say of a solver beside the name? Rule S3. Data only; the words are chosen when
// the sheet is written.

import { runAfter, type Turn } from './runs.ts';

/** A thing to say. */
export type ThingToSay =
  | { readonly code: 'put-right' }
  | { readonly code: 'topped-ladder' }
  | { readonly code: 'only-other-way' }
  | { readonly code: 'run'; readonly length: number }
  | { readonly code: 'first-time' }
  | { readonly code: 'return'; readonly missed: number }
  | { readonly code: 'found-both' }
  | { readonly code: 'best-defence' }
  | { readonly code: 'good-words'; readonly words: string };

/** What is known of a solver of the puzzle that is read out. */
export interface SolverStory {
  /** The solver's puzzles of the show, oldest first, this one last. */
  readonly history: readonly Turn[];
  /** The last sheet said something of the solver that was wrong. */
  readonly wasWronged: boolean;
  readonly toppedLadder: boolean;
  /** Found another way that works, and how many found one in all. */
  readonly foundOtherWay: boolean;
  readonly otherWayFinders: number;
  readonly foundBoth: boolean;
  /** Wrote down the longest-lasting defence. */
  readonly sawBestDefence: boolean;
  /** A sentence that the host starred; null where none. */
  readonly goodWords: string | null;
  /** Flags of the mark forbid praise beyond the name (an edit first seen after the reveal, rule T3). */
  readonly isPraiseBarred: boolean;
}

/** Runs worth a word: 3, 5, 10 and every further ten. */
function isRoundRun(length: number): boolean {
  return length === 3 || length === 5 || (length >= 10 && length % 10 === 0);
}

/** A pause of so many puzzles makes a return worth a word; common practice, no source. */
const RETURN_AFTER = 4;

/** The things to say of a solver, the one to say first in front: corrections come before all praise. */
export function thingsToSay(story: SolverStory): ThingToSay[] {
  const things: ThingToSay[] = [];
  if (story.wasWronged) things.push({ code: 'put-right' });
  if (story.isPraiseBarred) return things;
  if (story.toppedLadder) things.push({ code: 'topped-ladder' });
  if (story.foundOtherWay && story.otherWayFinders === 1) things.push({ code: 'only-other-way' });
  const run = runAfter(story.history);
  if (isRoundRun(run)) things.push({ code: 'run', length: run });
  const earlier = story.history.slice(0, -1).filter((turn) => turn !== 'void');
  const missed = [...earlier].reverse().findIndex((turn) => turn !== 'not-answered');
  if (!earlier.some((turn) => turn !== 'not-answered')) things.push({ code: 'first-time' });
  else if (missed >= RETURN_AFTER) things.push({ code: 'return', missed });
  if (story.foundBoth) things.push({ code: 'found-both' });
  if (story.sawBestDefence) things.push({ code: 'best-defence' });
  if (story.goodWords !== null) things.push({ code: 'good-words', words: story.goodWords });
  return things;
}
