import { describe, expect, it } from 'vitest';
import { bestOf, compareMarks, type Ranked, worstOf } from '#lib/marking/compare-marks.ts';

function mark(outcome: Ranked['outcome'], points: number, more: Partial<Ranked> = {}): Ranked {
  return { outcome, points, p: 0, r: 2, atMove: null, ...more };
}

/** From best to worst, as rule O0 lists it. */
const LADDER: readonly Ranked[] = [
  mark('solved', 5),
  mark('slower', 3),
  mark('slower', 2),
  mark('unfinished', 2, { p: 2, r: 3 }),
  mark('unfinished', 2, { p: 1, r: 3 }),
  mark('slipped', 2, { atMove: 3 }),
  mark('slipped', 2, { atMove: 2 }),
  mark('impossible', 2, { atMove: 3 }),
  mark('impossible', 2, { atMove: 2 }),
  mark('unfinished', 0),
  mark('wrong', 0, { atMove: 1 }),
  mark('unreadable', 0),
  mark('chatter', 0),
];

describe('compareMarks', () => {
  it('[O0] puts more points first, then outcomes in their order, then the longer way', () => {
    for (const [at, better] of LADDER.entries()) {
      for (const worse of LADDER.slice(at + 1)) {
        expect(compareMarks(better, worse), `${better.outcome} before ${worse.outcome}`).toBeLessThan(0);
        expect(compareMarks(worse, better)).toBeGreaterThan(0);
      }
    }
  });

  it('[O0] makes no difference between equals', () => {
    for (const one of LADDER) expect(compareMarks(one, { ...one })).toBe(0);
  });
});

describe('bestOf', () => {
  it('[O0] takes the best, the first of equals', () => {
    const twin = { ...mark('solved', 5), name: 'twin' };
    const first = { ...mark('solved', 5), name: 'first' };
    expect(bestOf([{ ...mark('wrong', 0), name: 'wrong' }, first, twin]).name).toBe('first');
  });

  it('[O0] an unclear candidate beside none that is solved makes the answer unclear', () => {
    expect(bestOf([mark('unfinished', 2), mark('unclear', 0)]).outcome).toBe('unclear');
    expect(bestOf([mark('unclear', 0), mark('solved', 5)]).outcome).toBe('solved');
  });

  it('[P3] meanwhile it keeps the points that another candidate is certain of', () => {
    expect(bestOf([mark('unfinished', 2, { p: 1 }), mark('unclear', 0)])).toMatchObject({ points: 2, p: 1 });
  });
});

describe('worstOf', () => {
  it('[O4] takes the worst of a choice', () => {
    expect(worstOf([mark('solved', 5), mark('wrong', 0)]).outcome).toBe('wrong');
  });

  it('[O4] is unclear where one of the two is: it may yet be the worse', () => {
    expect(worstOf([mark('solved', 5), mark('unclear', 0)]).outcome).toBe('unclear');
  });
});
