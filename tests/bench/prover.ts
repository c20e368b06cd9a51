// The mate prover on five published mates in 4 and two mates in 5, against another library's perft(5)
// of the start position, measured in the same run; and what the question of one move more costs.

import { createHash } from 'node:crypto';
import { Chess } from 'chess.js';
import { createEngine } from '#lib/engine/create-engine.ts';
import { proveMate } from '#lib/engine/prove-mate.ts';
import { mateCases } from '../support/mate-cases.ts';
import { alternate, cpuMs, finish, say } from './inner/measure.ts';

interface Problem {
  readonly id: string;
  readonly fen: string;
  readonly moves: number;
  readonly keys: readonly string[];
}

const hashOf = (fen: string) => createHash('sha256').update(fen).digest('hex');
const fours: Problem[] = mateCases()
  .filter(({ moves }) => moves === 4)
  .sort((a, b) => (hashOf(a.fen) < hashOf(b.fen) ? -1 : 1))
  .slice(0, 5);
/** Samuel Loyd 1861: a quiet unique key. */
const loyd: Problem = {
  id: 'Loyd 1861',
  fen: 'n1rb4/1p3p1p/1p6/1R5K/8/p3p1PN/1PP1R3/N6k w - - 0 1',
  moves: 5,
  keys: ['b2b4'],
};
const crowded: Problem = {
  id: 'three keys',
  fen: '1r3n2/2pB1pq1/1bR3p1/N2NR2b/KP1kpp1r/1p2p3/1PP2Q1n/8 w - - 0 1',
  moves: 5,
  keys: ['c6c5', 'd7g4', 'f2h4'],
};

const engine = createEngine();
const problems = [...fours, loyd, crowded];

function prove({ id, fen, moves, keys }: Problem, withSlower: boolean): number {
  const report = proveMate(engine, { fen, moves, proofNodes: 20_000_000, withSlower, withProof: false });
  const found = report.keys.map(({ uci }) => uci).join(' ');
  if (found !== keys.join(' ')) throw new Error(`${id}: keys ${found}, not ${keys.join(' ')}`);
  return report.nodes;
}

const other = new Chess();
const times = alternate(
  [
    { name: 'other', work: () => other.perft(5) },
    ...problems.map((problem) => ({
      name: problem.id,
      repeats: problem.moves === 4 ? 20 : problem === loyd ? 5 : 1,
      work: () => prove(problem, false),
    })),
  ],
  3,
);
const theirs = times.get('other') ?? 0;
say('chess.js, perft(5) of the start position', `${theirs.toFixed(0)} ms`);

function judge({ id, moves, fen, keys }: Problem, floor: number, aim: number): boolean {
  const ms = times.get(id) ?? 0;
  const nodes = prove({ id, moves, fen, keys }, false);
  return say(
    `mate in ${moves}, ${id}: all keys, all refutations`,
    `${ms.toFixed(1)} ms, ${(nodes / 1e6).toFixed(2)} M nodes, 1/${(theirs / ms).toFixed(1)}`,
    { floor: `1/${floor}`, aim: `1/${aim}`, isMet: theirs / ms >= floor },
  );
}
const floors = [
  ...fours.map((problem) => judge(problem, 80, 250)),
  judge(loyd, 12, 40),
  judge(crowded, 1.5, 6),
];

for (const problem of problems) {
  let nodes = 0;
  const ms = cpuMs(() => {
    nodes = prove(problem, true);
  });
  say(
    `  the same with the question of one move more, ${problem.id}`,
    `${ms.toFixed(0)} ms, ${(nodes / 1e6).toFixed(2)} M nodes, ${(ms / (times.get(problem.id) ?? 1)).toFixed(1)} times as long`,
  );
}
finish(floors);
