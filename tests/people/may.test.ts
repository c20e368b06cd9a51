import { expect, test } from 'vitest';
import { type DeskDeed, may, parseRole } from '#lib/people/may.ts';

const rows: [DeskDeed, boolean][] = [
  ['look-at-desk', true],
  ['settle-doubtful', true],
  ['import-comments', true],
  ['overrule-mark', true],
  ['write-sheet-notes', true],
  ['create-puzzle', false],
  ['publish-puzzle', false],
  ['close-puzzle', false],
  ['extend-puzzle', false],
  ['amend-puzzle', false],
  ['reveal-puzzle', false],
  ['void-puzzle', false],
  ['regrade-puzzle', false],
  ['change-show', false],
  ['manage-members', false],
  ['export-show', false],
];

test.each(rows)("[A3] \"%s\" is the owner's right; the helper's: %s; never a viewer's", (deed, helperMay) => {
  expect(may('owner', deed)).toBe(true);
  expect(may('helper', deed)).toBe(helperMay);
  expect(may('viewer', deed)).toBe(false);
});

test('[A3] a role that is not known gives no rights, whatever its spelling', () => {
  for (const text of ['', 'Owner', 'owner ', 'admin', '__proto__']) expect(parseRole(text)).toBe('viewer');
  expect(parseRole('owner')).toBe('owner');
  expect(parseRole('helper')).toBe('helper');
});
