import { expect, test } from 'vitest';
import { createRandom } from '#lib/kit/random.ts';

test('[A4] the same seed gives the same numbers, another seed gives others (seeds 7 and 8)', () => {
  const draw = (seed: number) => {
    const random = createRandom(seed);
    return Array.from({ length: 50 }, () => random.next());
  };
  expect(draw(7)).toEqual(draw(7));
  expect(draw(7)).not.toEqual(draw(8));
});

test('numbers lie from 0 to below 1 and fill the range evenly (seed 1)', () => {
  const random = createRandom(1);
  const counts = new Array<number>(10).fill(0);
  for (let draws = 0; draws < 100_000; draws += 1) {
    const value = random.next();
    expect(value >= 0 && value < 1).toBe(true);
    counts[Math.floor(value * 10)]! += 1;
  }
  // Five standard deviations of a fair draw are 474.
  for (const count of counts) expect(Math.abs(count - 10_000)).toBeLessThan(474);
});

test('whole numbers stay below their bound and reach both ends (seed 2)', () => {
  const random = createRandom(2);
  const seen = new Set(Array.from({ length: 400 }, () => random.int(6)));
  expect([...seen].sort()).toEqual([0, 1, 2, 3, 4, 5]);
});

test('pick takes each entry of a list, and refuses an empty one (seed 3)', () => {
  const random = createRandom(3);
  const seen = new Set(Array.from({ length: 100 }, () => random.pick(['a', 'b', 'c'])));
  expect([...seen].sort()).toEqual(['a', 'b', 'c']);
  expect(() => random.pick([])).toThrow('empty');
});
