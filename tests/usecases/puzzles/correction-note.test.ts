import { expect, test } from 'vitest';
import { LONGEST_NOTE, noteOf } from '#lib/usecases/puzzles/correction-note.ts';
import { accepted, refused } from '../../support/positions.ts';

test.each([
  ['blanks at the ends fall away', '  Sorry. \n', 'Sorry.'],
  ['nothing is a note too', ' ', ''],
  ['what the database cannot keep falls away', 'a\0b', 'ab'],
  ['half of a sign is made whole', 'a\ud83d', 'a\ufffd'],
])('[A6] %s', (_what, typed, kept) => {
  expect(accepted(noteOf(typed))).toBe(kept);
});

test('[A6] a note too long is refused with both numbers, and an empty one where it is needed', () => {
  const long = 'x'.repeat(LONGEST_NOTE + 1);
  expect(refused(noteOf(long))).toEqual({ code: 'note-too-long', length: 501, most: 500 });
  expect(refused(noteOf(' \n', true))).toEqual({ code: 'note-empty' });
});
