// The kernel's generator against every published count.

import { expect, test } from 'vitest';
import { perftCount } from '#lib/engine/count-moves.ts';
import { createEngine } from '#lib/engine/create-engine.ts';
import { readCaseLines } from '../support/read-cases.ts';

const engine = createEngine({ hashMiB: 1 });
/** The few counts above this would take a minute; `npm run bench -- perft` has them. */
const LARGEST = 30_000_000;

const cases = readCaseLines('perft.epd').map((line) => {
  const [fen = '', ...parts] = line.split(';').map((part) => part.trim());
  const counts = parts.flatMap((part) => {
    const found = /^D(\d+) (\d+)$/.exec(part);
    return found ? [{ depth: Number(found[1]), count: Number(found[2]) }] : [];
  });
  return { fen, name: /^id "(.*)"$/.exec(parts.at(-1) ?? '')?.[1] ?? fen, counts };
});

test('[V0] the generator reaches every published count, with and without making the last move', () => {
  expect(cases.length).toBe(295);
  const wrong = cases.flatMap(({ fen, name, counts }) =>
    counts.flatMap(({ depth, count }) => {
      if (count > LARGEST) return [];
      const bulk = perftCount(engine, fen, depth);
      const full = count > 300_000 ? bulk : perftCount(engine, fen, depth, { bulk: false });
      return bulk === count && full === count ? [] : [`${name} D${depth}: ${bulk}, ${full}, not ${count}`];
    }),
  );
  expect(wrong).toEqual([]);
});

test('[V0] perft of depth 0 is the position itself', () => {
  expect(perftCount(engine, '4k3/8/8/8/8/8/8/4K2R w K - 0 1', 0)).toBe(1);
});
