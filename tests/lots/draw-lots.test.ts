import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { drawLots } from '#lib/lots/draw-lots.ts';
import { parseEntropy } from '#lib/lots/parse-entropy.ts';
import { accepted } from '../support/positions.ts';
import { readCase } from '../support/read-cases.ts';

const md5 = (bytes: Uint8Array): string => createHash('md5').update(bytes).digest('hex');
const rfc = JSON.parse(readCase('rfc3797.json'));
const names: string[] = rfc.pool;

describe('[S4] the worked example of RFC 3797', () => {
  test('every published step comes out: hash, remainder and name', () => {
    const steps = drawLots(names, { key: accepted(parseEntropy(rfc.entropy)), count: 16, md5 });
    expect(
      steps.map(({ affix, md5: hash, poolSize, remainder, number, name }) => [
        affix,
        hash,
        poolSize,
        remainder,
        number,
        name,
      ]),
    ).toEqual(rfc.steps);
  });

  test('the ten chosen are the published ten, in their order', () => {
    const steps = drawLots(names, { key: rfc.key, count: 10, md5 });
    expect(steps.map(({ name }) => name)).toEqual(rfc.chosen);
  });
});

test('[S4] more places than names: everybody is drawn once', () => {
  const steps = drawLots(['Ann', 'Bo', 'Ann'], { key: '1./', count: 9, md5 });
  expect(steps.map(({ number }) => number).sort()).toEqual([1, 2, 3]);
});

test('[S4] the 257th choice is written in two bytes', () => {
  const many = Array.from({ length: 300 }, (_, index) => `Solver ${index}`);
  const steps = drawLots(many, { key: '7./', count: 300, md5 });
  expect(steps[256]?.affix).toBe('0100');
  expect(steps[256]?.md5).toBe(md5(Uint8Array.from([1, 0, 55, 46, 47, 1, 0])).toUpperCase());
  expect(new Set(steps.map(({ number }) => number)).size).toBe(300);
});

test('[S4] nobody to draw from: nobody is drawn', () => {
  expect(drawLots([], { key: '7./', count: 1, md5 })).toEqual([]);
});
