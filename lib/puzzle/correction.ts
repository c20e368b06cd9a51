// What does a correction notice say? Rule A6: what changed, as codes; rule T2: until the reveal nothing
// in it depends on a solution but that it was looked at again.

import type { PuzzleTerms } from '#lib/book/terms.ts';

/** What an amendment can change, in the order of notices. `keys`: published lines and the bounds of the verdicts. */
export const CHANGES = ['position', 'task', 'conditions', 'keys'] as const;
export type Change = (typeof CHANGES)[number];

export const CORRECTION_KINDS = ['amended', 'extended', 'void'] as const;
export type CorrectionKind = (typeof CORRECTION_KINDS)[number];

/** A notice as anybody may read it. */
export interface PublicCorrection {
  readonly kind: CorrectionKind;
  readonly at: Date;
  /** The host's words; empty where there are none. */
  readonly note: string;
  /** Of an amendment; empty for the other kinds. */
  readonly changed: readonly Change[];
  /** The close before and after it was moved; null for the other kinds. */
  readonly from: Date | null;
  readonly to: Date | null;
}

type Conditions = 'scheme' | 'anyDefence' | 'mateWritten' | 'solverMoves' | 'isStrict';
type Bounds = 'winBound' | 'slipBound' | 'drawBound' | 'drawSlipBound';

const CONDITIONS: readonly Conditions[] = ['scheme', 'anyDefence', 'mateWritten', 'solverMoves', 'isStrict'];
const BOUNDS: readonly Bounds[] = ['winBound', 'slipBound', 'drawBound', 'drawSlipBound'];

/** What differs between two sets of terms, as codes; budgets are no part of what a puzzle asks. */
export function whatChanged(former: PuzzleTerms, next: PuzzleTerms): Change[] {
  const differs: Readonly<Record<Change, boolean>> = {
    position: former.fen !== next.fen,
    task: taskWord(former) !== taskWord(next),
    conditions: CONDITIONS.some((name) => former[name] !== next[name]),
    keys:
      former.published.join('\n') !== next.published.join('\n') ||
      BOUNDS.some((name) => former[name] !== next[name]),
  };
  return CHANGES.filter((change) => differs[change]);
}

/**
 * Whether a writer cannot tell two sets of terms apart: position, task and conditions are the same. What was
 * corrected in the keys alone holds for everybody.
 */
export function looksTheSame(former: PuzzleTerms, next: PuzzleTerms): boolean {
  return whatChanged(former, next).every((change) => change === 'keys');
}

function taskWord({ task }: PuzzleTerms): string {
  return task.kind === 'mate' ? `mate ${task.moves}` : task.kind;
}
