import { expect, test } from 'vitest';
import { tailpiece } from '../support/command-line.ts';
import { readCaseLines } from '../support/read-cases.ts';

// The six commonly published positions (source in tests/cases/perft.epd).
const six = readCaseLines('perft.epd').slice(0, 6);

test.each([3, 4])('perft prints the published counts at depth %i', async (depth) => {
  for (const line of six) {
    const fen = line.split(' ;')[0] ?? '';
    const count = Number(new RegExp(`;D${depth} (\\d+)`).exec(line)?.[1]);
    const { status, out, err } = await tailpiece(['perft', '--fen', fen, '--depth', String(depth)]);
    expect([status, err]).toEqual([0, '']);
    expect(out).toMatch(new RegExp(`^{"nodes":${count},"ms":\\d+}\\n$`));
  }
});

test('depth 0 is the position itself', async () => {
  const { out } = await tailpiece(['perft', '--fen', six[0]?.split(' ;')[0] ?? '', '--depth', '0']);
  expect(JSON.parse(out)).toMatchObject({ nodes: 1 });
});
