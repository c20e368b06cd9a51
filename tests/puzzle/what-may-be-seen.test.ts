import { describe, expect, test } from 'vitest';
import type { PuzzleState } from '#lib/puzzle/puzzle-state.ts';
import { mayBeSeen, type PuzzlePart } from '#lib/puzzle/what-may-be-seen.ts';

const STATES: PuzzleState[] = ['draft', 'verified', 'published', 'open', 'closed', 'revealed', 'void'];
const SECRET: PuzzlePart[] = ['solution', 'why-not', 'first-moves', 'roll'];
const DESK_ONLY: PuzzlePart[] = ['soundness-report', 'marks', 'read-out-sheet'];

describe('[T2] the embargo', () => {
  test.each(SECRET)('[T2] the public sees "%s" in the state revealed and in no other', (part) => {
    expect(STATES.filter((state) => mayBeSeen(part, 'public', state))).toEqual(['revealed']);
    expect(STATES.filter((state) => mayBeSeen(part, 'solver', state))).toEqual(['revealed']);
  });

  test.each(DESK_ONLY)('[T2] "%s" never leaves the desk', (part) => {
    for (const who of ['public', 'solver'] as const) {
      expect(STATES.filter((state) => mayBeSeen(part, who, state))).toEqual([]);
    }
    expect(mayBeSeen(part, 'desk', 'draft')).toBe(true);
  });

  test('[T2] a solver reads the own answer at once and the own mark only after the reveal', () => {
    expect(mayBeSeen('own-answer', 'solver', 'open')).toBe(true);
    expect(STATES.filter((state) => mayBeSeen('own-mark', 'solver', state))).toEqual(['revealed']);
    expect(mayBeSeen('own-answer', 'public', 'revealed')).toBe(false);
  });

  test('[T2] a draft, a verified puzzle and one not yet open do not exist for the public', () => {
    expect(STATES.filter((state) => mayBeSeen('puzzle', 'public', state))).toEqual([
      'open',
      'closed',
      'revealed',
      'void',
    ]);
  });
});
