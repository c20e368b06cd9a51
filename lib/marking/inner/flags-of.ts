// Which flags stand beside the outcome? Section 4 of the marking rules, those that follow from reading and book.

import type { ReadResult } from '#lib/reading/reading.ts';
import type { Flag } from '../mark.ts';
import { findOtherWay } from '../other-way.ts';
import type { Beyond } from './beyond-the-end.ts';
import type { Judged } from './judge-reading.ts';
import type { PuzzleFacts } from './walk-context.ts';

/** Flags of a line that was taken, in a fixed order. */
export function flagsOf(
  facts: PuzzleFacts,
  judged: Judged,
  {
    read,
    beyond,
    isGenerous,
  }: { readonly read: ReadResult; readonly beyond: Beyond; readonly isGenerous: boolean },
): Flag[] {
  const { walk, reading, line, outcome } = judged;
  const isFinished = outcome === 'solved' || outcome === 'slower';
  const has: readonly (readonly [Flag, boolean])[] = [
    ['other-way', findOtherWay(facts.published, walk.node, walk.p) !== null],
    ['generous', isGenerous || reading.isGenerous],
    ['typo', line.line.some(({ isTypo }) => isTypo)],
    ['solver-only', reading.isSolverOnly],
    ['weak-defence', walk.because === 'weak-defence'],
    ['past-the-end', isFinished && beyond.goesWrong],
    ['still-winning', walk.row?.stillWinning === true && (outcome === 'wrong' || outcome === 'slipped')],
    ['found-both', judged.hasFoundBoth],
    ['cut-by-source', read.isCutBySource],
    ['benefit-of-doubt', walk.verdicts.some(({ isBenefit }) => isBenefit === true)],
  ];
  return has.filter(([, isSet]) => isSet).map(([flag]) => flag);
}
