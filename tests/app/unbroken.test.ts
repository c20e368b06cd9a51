import { expect, test } from 'vitest';
import { unbroken } from '../../app/_ui/unbroken.ts';

test('[A1] no line of an explanation ends between a number and its move', () => {
  expect(unbroken('After 2 Qd6+ Black plays 2 … ♘xd6.')).toBe(
    'After 2\u00a0Qd6+ Black plays 2\u00a0…\u00a0♘xd6.',
  );
  expect(unbroken('mate in 3, on move 4')).toBe('mate in 3, on move 4');
});
