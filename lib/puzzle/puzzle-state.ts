// In which state of its life is a puzzle? Open and closed are never stored: they follow from the
// times, so that a late job or a slow clock cannot keep a puzzle open (rule P2).

import { isOpenAt } from './is-open-at.ts';

/** The states of a puzzle's life, in order; `void` may follow any of the public ones (rule A6). */
export type PuzzleState = 'draft' | 'verified' | 'published' | 'open' | 'closed' | 'revealed' | 'void';

/** The stored moments that make the state; null where the deed has not been done. */
export interface PuzzleMoments {
  readonly verifiedAt: Date | null;
  readonly publishedAt: Date | null;
  readonly opensAt: Date | null;
  readonly closesAt: Date | null;
  readonly revealedAt: Date | null;
  readonly voidedAt: Date | null;
}

/**
 * The state at a moment (`now`, the database's clock). `published` is a puzzle whose opening lies
 * ahead; a reveal outranks the times, a puzzle made void outranks everything.
 */
export function stateAt(puzzle: PuzzleMoments, now: Date): PuzzleState {
  if (puzzle.voidedAt !== null) return 'void';
  if (puzzle.revealedAt !== null) return 'revealed';
  if (puzzle.publishedAt === null) return puzzle.verifiedAt === null ? 'draft' : 'verified';
  if (isOpenAt(puzzle, now)) return 'open';
  const isAhead = puzzle.opensAt === null || now.getTime() < puzzle.opensAt.getTime();
  return isAhead ? 'published' : 'closed';
}
