// Who may see what of a puzzle, and when? Rule T2: until the reveal nothing public depends on
// verdicts, marks or solutions; drafts and puzzles not yet open do not exist for the public.

import { exhaustive } from '#lib/kit/exhaustive.ts';
import type { PuzzleState } from './puzzle-state.ts';

/** `public` is anybody; `solver` is the person who holds the receipt in question; `desk` is owner or helper. */
export type Onlooker = 'public' | 'solver' | 'desk';

/** A thing that a page, picture or reply can show. */
export type PuzzlePart =
  | 'puzzle'
  | 'own-answer'
  | 'own-mark'
  | 'solution'
  | 'why-not'
  | 'first-moves'
  | 'roll'
  | 'soundness-report'
  | 'marks'
  | 'read-out-sheet';

/**
 * Whether an onlooker may see a part of a puzzle in a state. A solver sees the own answer from the
 * moment of sending, the own mark only after the reveal. A puzzle made void shows itself and its
 * notice, and no solution: it may have been void before its reveal.
 */
export function mayBeSeen(part: PuzzlePart, who: Onlooker, state: PuzzleState): boolean {
  if (who === 'desk') return true;
  switch (part) {
    case 'puzzle':
      return state === 'open' || state === 'closed' || state === 'revealed' || state === 'void';
    case 'own-answer':
      return who === 'solver';
    case 'own-mark':
      return who === 'solver' && state === 'revealed';
    case 'solution':
    case 'why-not':
    case 'first-moves':
    case 'roll':
      return state === 'revealed';
    case 'soundness-report':
    case 'marks':
    case 'read-out-sheet':
      return false;
    default:
      return exhaustive(part);
  }
}
