import { expect, test } from 'vitest';
import { exhaustive } from '#lib/kit/exhaustive.ts';

test('a code that nobody handled is named in the error', () => {
  // The compiler refuses such a call; only data from outside could bring one in at run time.
  expect(() => exhaustive('sideways' as never)).toThrow('sideways');
});
