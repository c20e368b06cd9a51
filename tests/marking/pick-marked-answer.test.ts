import { describe, expect, it } from 'vitest';
import { type PickedStanding, pickMarkedAnswers, type TimedAnswer } from '#lib/marking/pick-marked-answer.ts';

function answer(id: number, more: Partial<TimedAnswer> = {}): TimedAnswer {
  return { id, solverId: 1, timely: 'in-time', isReply: false, outcome: 'solved', ...more };
}

function standings(answers: readonly TimedAnswer[], countsFirst = false): PickedStanding[] {
  return pickMarkedAnswers(answers, { countsFirst }).map(({ standing }) => standing);
}

describe('pickMarkedAnswers', () => {
  it.each<[string, readonly TimedAnswer[], PickedStanding[]]>([
    [
      '[P2] the last answer in time counts',
      [answer(1), answer(2, { outcome: 'wrong' })],
      ['replaced', 'counted'],
    ],
    ['[P2] one after the close does not', [answer(1), answer(2, { timely: 'late' })], ['counted', 'late']],
    ['[P2] nor one before the opening', [answer(1, { timely: 'early' }), answer(2)], ['early', 'counted']],
    [
      '[P2] a coarse time that holds the close counts',
      [answer(1), answer(2, { timely: 'uncertain' })],
      ['replaced', 'counted'],
    ],
    [
      '[P4] chatter replaces nothing',
      [answer(1), answer(2, { outcome: 'chatter' })],
      ['counted', 'no-answer'],
    ],
    [
      '[P4] nor does a text that cannot be read',
      [answer(1), answer(2, { outcome: 'unreadable' })],
      ['counted', 'replaced'],
    ],
    [
      '[P4] a reply to somebody replaces nothing',
      [answer(1), answer(2, { isReply: true })],
      ['counted', 'reply'],
    ],
    ['[P4] alone, a reply is the answer', [answer(1, { isReply: true })], ['counted']],
    [
      'a text that cannot be read stands where there is nothing better',
      [answer(1, { outcome: 'unreadable' })],
      ['counted'],
    ],
    ['chatter alone is no answer', [answer(1, { outcome: 'chatter' })], ['no-answer']],
    [
      'what is not marked yet waits, and the former counts meanwhile',
      [answer(1), answer(2, { outcome: null })],
      ['counted', 'waiting'],
    ],
    [
      '[T3] a comment first seen after the reveal takes the place of no answer, better or worse',
      [answer(1), answer(2, { outcome: 'wrong', seenLateIn: 7 }), answer(3, { seenLateIn: 7 })],
      ['counted', 'after-reveal', 'after-reveal'],
    ],
    [
      '[T3] where none was there it counts, the last of the import that brought it, and a later import changes nothing',
      [
        answer(1, { outcome: 'unreadable' }),
        answer(2, { outcome: 'wrong', seenLateIn: 7 }),
        answer(3, { seenLateIn: 9 }),
        answer(4, { seenLateIn: 7 }),
      ],
      ['replaced', 'replaced', 'after-reveal', 'counted'],
    ],
    ['[P2] each solver has one', [answer(1), answer(2, { solverId: 2 })], ['counted', 'counted']],
  ])('%s', (_, answers, expected) => {
    expect(standings(answers)).toEqual(expected);
  });

  it('[P2] the host may let the first count', () => {
    expect(standings([answer(1, { outcome: 'wrong' }), answer(2)], true)).toEqual(['counted', 'replaced']);
    expect(standings([answer(1, { outcome: 'chatter' }), answer(2), answer(3)], true)).toEqual([
      'no-answer',
      'counted',
      'replaced',
    ]);
  });
});
