import { describe, expect, test } from 'vitest';
import { parseEpd } from '#lib/rules/epd.ts';
import { perft } from '#lib/rules/perft.ts';
import { accepted } from '../support/positions.ts';
import { readCaseLines } from '../support/read-cases.ts';

// Larger counts are left to the engine's own test; these take a few seconds.
const MOST = 120_000;

describe('published node counts (sources in tests/cases/perft.epd)', () => {
  const lines = readCaseLines('perft.epd');

  test('the file holds all 295 positions', () => {
    expect(lines).toHaveLength(295);
  });

  test(`every published count up to ${MOST} comes out`, () => {
    const wrong: string[] = [];
    let counts = 0;
    for (const line of lines) {
      const { position, operations } = accepted(parseEpd(line));
      for (const [opcode, [count]] of operations) {
        const depth = Number(/^D(\d+)$/.exec(opcode)?.[1] ?? 0);
        if (depth === 0 || Number(count) > MOST) continue;
        counts += 1;
        const found = perft(position, depth);
        if (found !== Number(count)) wrong.push(`${line.split(' ;')[0]} D${depth}: ${found}, not ${count}`);
      }
    }
    expect(wrong).toEqual([]);
    expect(counts).toBeGreaterThan(900);
  });

  test('depth 0 counts the position itself', () => {
    const { position } = accepted(parseEpd(lines[0] ?? ''));
    expect(perft(position, 0)).toBe(1);
  });
});
