// May this deed be done to the puzzle now, and what state follows? Carries out rules A5 (a claim
// proved false cannot be published), V9 (published lines pass their own marking) and A6 (void).

import { exhaustive } from '#lib/kit/exhaustive.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { type PuzzleMoments, type PuzzleState, stateAt } from './puzzle-state.ts';

/** What the host does to a puzzle. `open` and `close by time` are not deeds: they follow from the clock. */
export type PuzzleDeed = 'publish' | 'close' | 'reveal' | 'void';

/** What verification said of the task's claim; null while it has not ended. */
export type ClaimStatus = 'true' | 'false' | 'unclear';

/** What decides whether a deed may be done. */
export interface DeedFacts extends PuzzleMoments {
  readonly claim: ClaimStatus | null;
  /** How many published lines are not marked `solved` (rule V9). */
  readonly failingLines: number;
  /** The host's reason for going on in spite of an unclear claim or a failing line; logged; null where none was given. */
  readonly overrideReason: string | null;
}

/** Why a deed is refused; `state` is the state that the puzzle is in. */
export type DeedReason =
  | { readonly code: 'not-verified'; readonly state: PuzzleState }
  | { readonly code: 'claim-false'; readonly state: PuzzleState }
  | { readonly code: 'claim-unclear-without-reason'; readonly state: PuzzleState }
  | { readonly code: 'published-line-fails'; readonly state: PuzzleState; readonly lines: number }
  | { readonly code: 'times-missing'; readonly state: PuzzleState }
  | { readonly code: 'close-not-after-opening'; readonly state: PuzzleState }
  | { readonly code: 'close-is-past'; readonly state: PuzzleState }
  | { readonly code: 'wrong-state'; readonly state: PuzzleState; readonly expected: readonly PuzzleState[] };

const ALLOWED_FROM: Readonly<Record<PuzzleDeed, readonly PuzzleState[]>> = {
  publish: ['verified'],
  close: ['open'],
  reveal: ['closed'],
  void: ['published', 'open', 'closed', 'revealed'],
};

/**
 * The state after a deed at `now`, or the reason against it. Publishing gives `open` where the
 * opening has come and `published` where it lies ahead. A false claim is refused whatever reason is
 * given; an unclear one, or a published line that fails, goes with a reason only.
 */
export function nextState(facts: DeedFacts, deed: PuzzleDeed, now: Date): Result<PuzzleState, DeedReason> {
  const state = stateAt(facts, now);
  if (deed === 'publish' && (state === 'draft' || facts.claim === null)) {
    return refuse({ code: 'not-verified', state });
  }
  const expected = ALLOWED_FROM[deed];
  if (!expected.includes(state)) return refuse({ code: 'wrong-state', state, expected });
  switch (deed) {
    case 'publish': {
      const against = reasonAgainstPublishing(facts, state, now);
      if (against !== null) return refuse(against);
      return ok(stateAt({ ...facts, publishedAt: now }, now));
    }
    case 'close':
      return ok('closed');
    case 'reveal':
      return ok('revealed');
    case 'void':
      return ok('void');
    default:
      return exhaustive(deed);
  }
}

function reasonAgainstPublishing(facts: DeedFacts, state: PuzzleState, now: Date): DeedReason | null {
  if (facts.claim === 'false') return { code: 'claim-false', state };
  const hasReason = facts.overrideReason !== null && facts.overrideReason.trim() !== '';
  if (facts.claim === 'unclear' && !hasReason) return { code: 'claim-unclear-without-reason', state };
  if (facts.failingLines > 0 && !hasReason) {
    return { code: 'published-line-fails', state, lines: facts.failingLines };
  }
  if (facts.opensAt === null || facts.closesAt === null) return { code: 'times-missing', state };
  if (facts.closesAt.getTime() <= facts.opensAt.getTime()) return { code: 'close-not-after-opening', state };
  if (facts.closesAt.getTime() <= now.getTime()) return { code: 'close-is-past', state };
  return null;
}
