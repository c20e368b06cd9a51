// Every published mate of tests/cases/mates.epd: keys exact and every other move refuted, within the
// default budget of a first move; of the long ones, the listed move proved.

import { createEngine } from '#lib/engine/create-engine.ts';
import { judgeMateMoves } from '#lib/engine/judge-mate-moves.ts';
import { proveMate } from '#lib/engine/prove-mate.ts';
import { type MateCase, mateCases } from '../support/mate-cases.ts';
import { cpuMs, finish, say } from './inner/measure.ts';

const proofNodes = 20_000_000;
const engine = createEngine();
const all = mateCases();
const floors: boolean[] = [];

function isExact({ fen, moves, keys }: MateCase): boolean {
  const report = proveMate(engine, { fen, moves, proofNodes, withSlower: false, withProof: false });
  const found = report.keys.filter(({ mateIn }) => mateIn === moves).map(({ uci }) => uci);
  return report.isComplete && found.join(' ') === keys.join(' ') && report.mateIn === moves;
}

for (const [from, to, floor] of [
  [1, 4, 1],
  [5, 5, 0.95],
] as const) {
  const cases = all.filter(({ id, moves }) => !id.startsWith('long') && moves >= from && moves <= to);
  let exact = 0;
  const ms = cpuMs(() => {
    exact = cases.filter(isExact).length;
  });
  floors.push(
    say(`mates in ${from} to ${to}: ${cases.length}`, `${exact} exact, ${(ms / 1000).toFixed(1)} s`, {
      floor: `${floor * 100} %`,
      aim: '100 %',
      isMet: exact >= floor * cases.length,
    }),
  );
}

const long = all.filter(({ id }) => id.startsWith('long'));
let proved = 0;
for (const { id, fen, moves, keys } of long) {
  const ms = cpuMs(() => {
    const verdicts = judgeMateMoves(engine, { fen, moves: keys, movesLeft: moves, proofNodes });
    const words = verdicts.map(
      ({ move, verdict, mateIn, nodes }) =>
        `${move} ${verdict} ${mateIn ?? ''} ${(nodes / 1e6).toFixed(2)} M`,
    );
    if (verdicts.every(({ verdict }) => verdict === 'holds')) proved += 1;
    say(`  ${id}, mate in ${moves}`, words.join(', '));
  });
  say('', `${ms.toFixed(0)} ms`);
}
say(`long mates: ${long.length}`, `${proved} proved`);
finish(floors);
