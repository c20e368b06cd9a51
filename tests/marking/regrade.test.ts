import { describe, expect, it } from 'vitest';
import {
  answersToRegrade,
  costsItsSolver,
  type GradedMark,
  isOtherMark,
  type OwnAnswer,
  previewRegrade,
  type Regraded,
} from '#lib/marking/regrade.ts';

const solved: GradedMark = { outcome: 'solved', points: 5, p: 2, r: 2, atMove: null };
const wrong: GradedMark = { outcome: 'wrong', points: 0, p: 0, r: 2, atMove: 1 };
const partly: GradedMark = { outcome: 'unfinished', points: 2, p: 1, r: 2, atMove: null };

function answer(
  answerId: number,
  before: GradedMark,
  after: GradedMark,
  more: Partial<Regraded> = {},
): Regraded {
  return { answerId, before, after, isOverruled: false, isReadOut: false, ...more };
}

const answers = [
  answer(1, wrong, solved),
  answer(2, solved, partly),
  answer(3, solved, solved),
  answer(4, wrong, solved, { isReadOut: true }),
  answer(5, wrong, solved, { isOverruled: true }),
];

describe('previewRegrade', () => {
  it('[A7] shows what changes, falls first, and counts what stays', () => {
    const preview = previewRegrade(answers, { isRevealed: false });
    expect(preview.changes.map(({ answerId, direction, points }) => [answerId, direction, points])).toEqual([
      [2, 'down', -3],
      [1, 'up', 5],
      [4, 'up', 5],
    ]);
    expect([preview.same, preview.pointsUp, preview.pointsDown]).toEqual([1, 10, 3]);
  });

  it('[A7] before the reveal it is applied as a whole', () => {
    const preview = previewRegrade(answers, { isRevealed: false });
    expect(answersToRegrade(preview, new Set())).toEqual([2, 1, 4]);
  });

  it('[A7] after the reveal it raises by itself; a fall, or a name read out already, needs the host one by one', () => {
    const preview = previewRegrade(answers, { isRevealed: true });
    expect(preview.changes.map(({ answerId, wordFor }) => [answerId, wordFor])).toEqual([
      [2, 'would-fall'],
      [1, null],
      [4, 'read-out'],
    ]);
    expect(answersToRegrade(preview, new Set())).toEqual([1]);
    expect(answersToRegrade(preview, new Set([4]))).toEqual([1, 4]);
  });

  it("[A3] a mark under a person's word is named and left alone", () => {
    expect(previewRegrade(answers, { isRevealed: true }).overruled).toEqual([5]);
  });

  it('[O0] the same points for another outcome is a rise or a fall by the order of outcomes', () => {
    const slipped: GradedMark = { outcome: 'slipped', points: 2, p: 1, r: 2, atMove: 2 };
    const [change] = previewRegrade([answer(1, partly, slipped)], { isRevealed: true }).changes;
    expect([change?.direction, change?.wordFor]).toEqual(['down', 'would-fall']);
  });

  it('[A7] a mark whose rise would cost its solver a better one needs the host, before its name does', () => {
    const costly = { isCostly: true, isReadOut: true };
    const preview = previewRegrade([answer(1, unread, wrong, costly)], { isRevealed: true });
    expect(preview.changes[0]).toMatchObject({ direction: 'up', wordFor: 'would-count' });
    expect(answersToRegrade(preview, new Set())).toEqual([]);
  });
});

describe('isOtherMark', () => {
  const cases: [string, boolean, GradedMark, GradedMark][] = [
    ['another outcome for the same points', true, wrong, { ...wrong, outcome: 'impossible' }],
    ['other points', true, partly, { ...partly, points: 3 }],
    [
      'slips a move later',
      true,
      { ...partly, outcome: 'slipped', atMove: 2 },
      { ...partly, outcome: 'slipped', atMove: 3 },
    ],
    ['right in part, of a longer way', true, partly, { ...partly, r: 3 }],
    ['wrong at once, whatever the way is', false, wrong, { ...wrong, r: 3 }],
    ['solved, by a longer way', false, solved, { ...solved, p: 3, r: 3 }],
    ['the same', false, partly, { ...partly }],
  ];
  it.each(cases)('[A7] %s: %s', (_, expected, before, after) => {
    expect(isOtherMark(before, after)).toBe(expected);
  });
});

const unread: GradedMark = { outcome: 'unreadable', points: 0, p: 0, r: 2, atMove: null };

describe('costsItsSolver', () => {
  const own = (
    id: number,
    before: GradedMark | null,
    after: GradedMark | null,
    isReply = false,
  ): OwnAnswer => ({
    id,
    solverId: 1,
    timely: 'in-time',
    isReply,
    before,
    after,
  });
  const cases: [string, boolean, OwnAnswer[]][] = [
    ['a later text that can now be read and is wrong', true, [own(1, solved, solved), own(2, unread, wrong)]],
    ['the same, and it solves', false, [own(1, solved, solved), own(2, unread, solved)]],
    ['a reply replaces nothing by itself', false, [own(1, solved, solved), own(2, unread, wrong, true)]],
    ['the answer that counts falls itself: that is a fall of its own', false, [own(1, solved, wrong)]],
    ['the answer that counted is called chatter', true, [own(1, solved, { ...unread, outcome: 'chatter' })]],
    ['nothing counted before', false, [own(1, null, null), own(2, null, wrong)]],
  ];
  it.each(cases)('[P2] %s: %s', (_, expected, answers) => {
    expect(costsItsSolver(answers, { countsFirst: false })).toBe(expected);
  });

  it('[P2] where the first answer counts, a later one costs nothing', () => {
    const answers = [own(1, solved, solved), own(2, unread, wrong)];
    expect(costsItsSolver(answers, { countsFirst: true })).toBe(false);
  });
});
