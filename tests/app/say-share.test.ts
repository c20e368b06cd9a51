import { expect, test } from 'vitest';
import { sayShare } from '../../app/_ui/say-share.ts';

const SHARES: [number, number, string, string][] = [
  [200, 600, '1 in 3', 'a plain third'],
  [150, 620, '1 in 4', 'close to a quarter'],
  [90, 620, '1 in 7', 'as a column would say'],
  [599, 600, '9 in 10', 'never "all" where one is missing'],
  [600, 600, 'all', 'all'],
  [1, 600, '1 in 600', 'a lone one'],
  [13, 600, '1 in 46', 'below a tenth the whole number'],
  [300, 600, '1 in 2', 'half'],
  [1, 1, 'all', 'one answer in all'],
];
test.each(SHARES)('%i of %i is said "%s": %s', (count, of, said) => {
  expect(sayShare(count, of, 'en')).toBe(said);
});

test('the same in German', () => {
  expect(sayShare(200, 600, 'de')).toBe('1 von 3');
});
