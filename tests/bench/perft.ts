// Move generation against another rules library: the same count of the same positions.

import { Chess } from 'chess.js';
import { perftCount } from '#lib/engine/count-moves.ts';
import { createEngine } from '#lib/engine/create-engine.ts';
import { readCaseLines } from '../support/read-cases.ts';
import { alternate, finish, say } from './inner/measure.ts';

const POSITIONS = [
  { name: 'start position', fen: 'rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1', depth: 5 },
  {
    name: 'castling position',
    fen: 'r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq - 0 1',
    depth: 4,
  },
];
const ROUNDS = 3;
const engine = createEngine();
const floors: boolean[] = [];

for (const { name, fen, depth } of POSITIONS) {
  const other = new Chess(fen);
  const times = alternate(
    [
      { name: 'other', work: () => other.perft(depth) },
      { name: 'bulk', repeats: 30, work: () => perftCount(engine, fen, depth) },
      { name: 'full', repeats: 8, work: () => perftCount(engine, fen, depth, { bulk: false }) },
    ],
    ROUNDS,
  );
  const theirs = times.get('other') ?? 0;
  const count = perftCount(engine, fen, depth);
  say(`${name}, depth ${depth}: ${count} leaves, chess.js`, `${theirs.toFixed(0)} ms`);
  for (const [mode, floor, aim] of [
    ['bulk', 150, 300],
    ['full', 35, 60],
  ] as const) {
    const ours = times.get(mode) ?? 0;
    const ratio = theirs / ours;
    const rate = (count / ours / 1000).toFixed(0);
    floors.push(
      say(`  kernel, ${mode}`, `${ours.toFixed(1)} ms, ${rate} M/s, ${ratio.toFixed(0)}x`, {
        floor: `${floor}x`,
        aim: `${aim}x`,
        isMet: ratio >= floor,
      }),
    );
  }
}

// The published counts that the tests leave out because of their size.
let checked = 0;
for (const line of readCaseLines('perft.epd')) {
  const [fen = '', ...parts] = line.split(';').map((part) => part.trim());
  for (const part of parts) {
    const [, depth, count] = /^D(\d+) (\d+)$/.exec(part) ?? [];
    if (Number(count) <= 30_000_000 || !depth) continue;
    const found = perftCount(engine, fen, Number(depth));
    if (found !== Number(count)) throw new Error(`${fen} D${depth}: ${found}, not ${count}`);
    checked += 1;
  }
}
say('published counts above 30 million', `${checked} agree`);
finish(floors);
