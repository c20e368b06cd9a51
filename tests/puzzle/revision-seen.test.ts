import { describe, expect, test } from 'vitest';
import { revisionsSeen, toldRevision } from '#lib/puzzle/revision-seen.ts';

const at = (time: string) => new Date(`2026-11-21T${time}:00.000Z`);
const opensAt = at('10:00');
const once = { current: 2, opensAt, replaced: [{ revision: 1, replacedAt: at('12:00') }] };
const twice = {
  current: 3,
  opensAt,
  replaced: [...once.replaced, { revision: 2, replacedAt: at('14:00') }],
};
const early = {
  current: 3,
  opensAt,
  replaced: [
    { revision: 1, replacedAt: at('09:00') },
    { revision: 2, replacedAt: at('12:00') },
  ],
};
const never = { current: 1, opensAt, replaced: [] };

describe('[A6] what the writer saw', () => {
  const rows: [string, number | null, string, Parameters<typeof revisionsSeen>[1], number[]][] = [
    ['a puzzle that was never amended', null, '11:00', never, [1]],
    ['told the old one, sent long after: the check page stood open', 1, '13:00', once, [1]],
    ['told the new one', 2, '13:00', once, [2]],
    ['told the middle one of three', 2, '15:00', twice, [2]],
    ['told one that never was: not told', 9, '13:00', once, [2, 1]],
    ['told none, a minute before the amendment', null, '11:59', once, [1]],
    ['told none, at the very moment: the page may have been either', null, '12:00', once, [2, 1]],
    ['told none, after it: an old page may have stood open', null, '13:00', once, [2, 1]],
    ['told none, between two amendments: the third had not been seen', null, '13:00', twice, [2, 1]],
    ['told none, after both', null, '15:00', twice, [3, 2, 1]],
    ['told none, before both', null, '11:00', twice, [1]],
    ['replaced before the opening: nobody saw it', null, '11:00', early, [2]],
    ['replaced before the opening, sent after the next', null, '13:00', early, [3, 2]],
    ['a comment from before the opening, whatever it saw', null, '08:00', early, [2]],
    ['without an opening time', null, '08:00', { ...once, opensAt: null }, [1]],
  ];
  test.each(rows)('%s', (_what, told, latest, puzzle, expected) => {
    expect(revisionsSeen({ told, latest: at(latest) }, puzzle)).toEqual(expected);
  });
});

describe("[A6, A9] the page's word", () => {
  const rows: [unknown, number | null][] = [
    ['1', 1],
    ['2', 2],
    [2, 2],
    ['3', null],
    ['0', null],
    ['-1', null],
    ['1.5', null],
    [1.5, null],
    ['01', null],
    [' 1', null],
    ['1e1', null],
    ['', null],
    [Number.NaN, null],
    [Number.POSITIVE_INFINITY, null],
    ['99999999999999999999', null],
    [null, null],
    [undefined, null],
    [[1], null],
    [{ revision: 1 }, null],
    [true, null],
  ];
  test.each(rows)('%j of a puzzle at revision 2 is told as %j', (word, expected) => {
    expect(toldRevision(word, 2)).toBe(expected);
  });
});
