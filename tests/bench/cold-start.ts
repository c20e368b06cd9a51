// The prover's first call in a new process against a warm one: what a compiled kernel costs until it
// is fast. The process's own start is left out: what Node still compiles in the background after it has
// read our TypeScript is waited for, as it would count as the prover's; starting the engine is shown beside.
// The call is the whole question as `tailpiece prove` asks it; without the question of one move more a warm call is so
// short that compiling outweighs it, which is said beside.

import { spawnSync } from 'node:child_process';
import { setTimeout as wait } from 'node:timers/promises';
import { createEngine, type Engine } from '#lib/engine/create-engine.ts';
import { proveMate } from '#lib/engine/prove-mate.ts';
import { cpuMs, finish, median, say } from './inner/measure.ts';

const RUNS = 11;
/** Samuel Loyd 1861: mate in 5 with a quiet unique key. */
const LOYD = {
  fen: 'n1rb4/1p3p1p/1p6/1R5K/8/p3p1PN/1PP1R3/N6k w - - 0 1',
  moves: 5,
  proofNodes: 20_000_000,
  withProof: false,
};

interface Run {
  readonly startMs: number;
  readonly firstMs: number;
  readonly warmMs: number;
}

/** Until the process spends next to nothing for a while: its start is over. */
async function untilQuiet(): Promise<void> {
  for (let quiet = 0, looks = 0; quiet < 3 && looks < 60; looks += 1) {
    const before = process.cpuUsage();
    await wait(100);
    const { user, system } = process.cpuUsage(before);
    quiet = user + system < 2000 ? quiet + 1 : 0;
  }
}

function measureOne(withSlower: boolean): Run {
  const question = { ...LOYD, withSlower };
  let started: Engine | null = null;
  const startMs = cpuMs(() => {
    started = createEngine();
  });
  const engine: Engine = started ?? createEngine();
  const firstMs = cpuMs(() => proveMate(engine, question));
  const warm = Array.from({ length: 9 }, () => cpuMs(() => proveMate(engine, question)));
  return { startMs, firstMs, warmMs: median(warm.slice(4)) };
}

function measureAll(withSlower: boolean): { found: string; ratio: number } {
  const runs = Array.from({ length: RUNS }, () => {
    const args = [import.meta.filename, withSlower ? 'whole' : 'short'];
    const run: Run = JSON.parse(spawnSync(process.execPath, args, { encoding: 'utf8' }).stdout);
    return run;
  });
  const of = (pick: (run: Run) => number) => median(runs.map(pick));
  const ratio = of(({ firstMs, warmMs }) => firstMs / warmMs);
  const withStart = of(({ startMs, firstMs, warmMs }) => (startMs + firstMs) / warmMs);
  const ms = [of(({ startMs }) => startMs), of(({ firstMs }) => firstMs), of(({ warmMs }) => warmMs)];
  const [start, first, warm] = ms.map((one) => one.toFixed(0));
  const found = `${ratio.toFixed(2)}x: ${first} against ${warm} ms; engine start ${start} ms, with it ${withStart.toFixed(2)}x`;
  return { found, ratio };
}

if (process.argv[2] !== undefined) {
  await untilQuiet();
  process.stdout.write(JSON.stringify(measureOne(process.argv[2] === 'whole')));
} else {
  const whole = measureAll(true);
  finish([
    say(`first call against a warm one, median of ${RUNS}`, whole.found, {
      floor: '2.5x',
      aim: '1.3x',
      isMet: whole.ratio <= 2.5,
    }),
  ]);
  say('  the same without the question of one move more', measureAll(false).found);
}
