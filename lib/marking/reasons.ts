// Why is a mark what it is? Codes with parameters; the sentence is written when it is shown (mechanics: marks and
// explanations), by `explainMark`.

import type { Uci } from '#lib/rules/move.ts';

/** The first solver move that mates later, and on which move; null where none does. */
export type SlowerBefore = {
  readonly slowerAt: number | null;
  readonly mateOn: number;
};

/** Every code that a mark's reason can carry, with what it tells. Moves are counted in solver moves from 1. */
export type Reason =
  | { readonly code: 'solved'; readonly params: Readonly<Record<string, never>> }
  /** The move number `at` mates on move `mateOn`, asked by `asked`. */
  | {
      readonly code: 'slower';
      readonly params: { readonly at: number; readonly mateOn: number; readonly asked: number };
    }
  /** Right so far; `rest` is how it could go on from the end of the line. `missing` is 0 where nobody can say. */
  | {
      readonly code: 'unfinished';
      readonly params: { readonly missing: number; readonly rest: readonly Uci[] };
    }
  /**
   * The move number `at` mates later, on move `mateOn`, and the text stops before; or the reply after solver move
   * number `weakAt` is weak, and these last longer.
   */
  | {
      readonly code: 'slower-not-shown';
      readonly params: {
        readonly at: number;
        readonly mateOn: number;
        readonly weakAt: number | null;
        readonly better: readonly Uci[];
      };
    }
  /** The reply after solver move number `at` is weak; these last longer or cost less. */
  | {
      readonly code: 'weak-defence';
      readonly params: { readonly at: number; readonly better: readonly Uci[] };
    }
  /**
   * The solver move at which the mark stops slips. `by` plays the defence out, empty where none is needed; `how` says
   * what it loses; `better` are moves that hold in its place, as far as known.
   */
  | {
      readonly code: 'slip';
      readonly params: {
        readonly how: 'no-mate' | 'no-win' | 'no-draw' | 'stalemate' | 'draw' | 'repetition';
        readonly movesLeft: number | null;
        readonly by: readonly Uci[];
        readonly better: readonly Uci[];
      } & SlowerBefore;
    }
  /** `text` is what the viewer wrote there, cut short. */
  | { readonly code: 'impossible'; readonly params: { readonly text: string } & SlowerBefore }
  | { readonly code: 'unclear-verdict'; readonly params: Readonly<Record<string, never>> }
  | { readonly code: 'not-verified'; readonly params: Readonly<Record<string, never>> }
  /** Marking failed three times: the answer was set aside. */
  | { readonly code: 'parked'; readonly params: Readonly<Record<string, never>> }
  | { readonly code: 'too-many-fillings'; readonly params: Readonly<Record<string, never>> }
  /** Two readings that differ in squares or men; the moves at which they part, from the end of the line. */
  | { readonly code: 'two-readings'; readonly params: { readonly moves: readonly Uci[] } }
  | { readonly code: 'unreadable'; readonly params: { readonly text: string } }
  | { readonly code: 'board-turned'; readonly params: Readonly<Record<string, never>> }
  | { readonly code: 'chatter'; readonly params: Readonly<Record<string, never>> };
