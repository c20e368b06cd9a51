// The prover's first call in a new process against a warm one: what a compiled kernel costs until it
// is fast. The process's own start is left out; starting the engine is shown beside.

import { spawnSync } from 'node:child_process';
import { createEngine, type Engine } from '#lib/engine/create-engine.ts';
import { proveMate } from '#lib/engine/prove-mate.ts';
import { cpuMs, finish, median, say } from './inner/measure.ts';

const RUNS = 11;
/** Samuel Loyd 1861: mate in 5 with a quiet unique key. */
const LOYD = {
  fen: 'n1rb4/1p3p1p/1p6/1R5K/8/p3p1PN/1PP1R3/N6k w - - 0 1',
  moves: 5,
  proofNodes: 20_000_000,
  withSlower: false,
  withProof: false,
};

if (process.argv[2] === 'one') {
  let started: Engine | null = null;
  const startMs = cpuMs(() => {
    started = createEngine();
  });
  const engine: Engine = started ?? createEngine();
  const firstMs = cpuMs(() => proveMate(engine, LOYD));
  const warm = Array.from({ length: 9 }, () => cpuMs(() => proveMate(engine, LOYD)));
  process.stdout.write(JSON.stringify({ startMs, firstMs, warmMs: median(warm.slice(4)) }));
} else {
  const runs = Array.from({ length: RUNS }, () => {
    const { stdout } = spawnSync(process.execPath, [import.meta.filename, 'one'], { encoding: 'utf8' });
    const run: { startMs: number; firstMs: number; warmMs: number } = JSON.parse(stdout);
    return run;
  });
  const of = (pick: (run: (typeof runs)[number]) => number) => median(runs.map(pick));
  say('starting an engine', `${of(({ startMs }) => startMs).toFixed(1)} ms`);
  say(
    'first call, warm call',
    `${of(({ firstMs }) => firstMs).toFixed(0)} ms, ${of(({ warmMs }) => warmMs).toFixed(0)} ms`,
  );
  const ratio = of(({ firstMs, warmMs }) => firstMs / warmMs);
  const whole = of(({ startMs, firstMs, warmMs }) => (startMs + firstMs) / warmMs);
  finish([
    say(
      `first call against a warm one, median of ${RUNS}`,
      `${ratio.toFixed(2)}x (${whole.toFixed(2)}x with the start)`,
      {
        floor: '2.5x',
        aim: '1.3x',
        isMet: ratio <= 2.5,
      },
    ),
  ]);
}
