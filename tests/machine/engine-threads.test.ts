// The pool with real threads.

import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { createEngine } from '#lib/engine/create-engine.ts';
import { proveMate } from '#lib/engine/prove-mate.ts';
import { EngineJobError, startEngineThreads } from '#lib/machine/engine-threads.ts';
import { isRunning } from '../support/running-process.ts';

/** Paul Morphy, New York Clipper 1856 (source from memory): mate in 2. */
const MORPHY = {
  fen: 'kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1',
  moves: 2,
  proofNodes: 1_000_000,
  withSlower: true,
  withProof: true,
};
/** Samuel Loyd 1861, asked for far more moves than it has: works for as long as nobody stops it. */
const ENDLESS = {
  fen: 'n1rb4/1p3p1p/1p6/1R5K/8/p3p1PN/1PP1R3/N6k w - - 0 1',
  moves: 12,
  proofNodes: 1e15,
  withSlower: false,
  withProof: false,
};
const host = { for: 'host' } as const;

const pool = startEngineThreads({ threads: 2, hashMiB: 16 });
afterAll(() => pool.close());

const reasonOf = async (job: Promise<unknown>): Promise<string> => {
  try {
    await job;
    return 'done';
  } catch (fault) {
    return fault instanceof EngineJobError ? fault.reason : `not ours: ${fault}`;
  }
};

test('[V0] a thread gives the same report as the engine called directly', async () => {
  const report = await pool.run('proveMate', MORPHY, { owner: host });
  expect(report).toEqual(proveMate(createEngine({ hashMiB: 16 }), MORPHY));
});

test('a running job is cancelled, and its thread goes on with the next', async () => {
  const stop = new AbortController();
  let nodes = 0;
  const onProgress = (progress: { nodes: number }) => {
    nodes = progress.nodes;
    if (nodes > 0) stop.abort();
  };
  const job = pool.run('proveMate', ENDLESS, { owner: host, signal: stop.signal, onProgress });
  expect(await reasonOf(job)).toBe('cancelled');
  expect(nodes).toBeGreaterThan(0);
  expect((await pool.run('proveMate', MORPHY, { owner: host })).mateIn).toBe(2);
});

test('a job cancelled while it waits never runs, and one cancelled before it is asked neither', async () => {
  const stops = [new AbortController(), new AbortController(), new AbortController()];
  const [one, two, three] = stops.map((stop) =>
    reasonOf(pool.run('proveMate', ENDLESS, { owner: host, signal: stop.signal })),
  );
  expect(pool.load()).toEqual({ waiting: 1, running: 2 });
  stops[2]?.abort();
  expect(await three).toBe('cancelled');
  expect(pool.load()).toEqual({ waiting: 0, running: 2 });
  for (const stop of stops) stop.abort();
  expect(await Promise.all([one, two])).toEqual(['cancelled', 'cancelled']);
  expect(await reasonOf(pool.run('proveMate', MORPHY, { owner: host, signal: AbortSignal.abort() }))).toBe(
    'cancelled',
  );
});

test('the host comes before a backlog, and answers take turns', async () => {
  const single = startEngineThreads({ threads: 1, hashMiB: 1 });
  const order: string[] = [];
  const ask = async (name: string, owner: Parameters<typeof single.run>[2]['owner']) => {
    await single.run('proveMate', MORPHY, { owner });
    order.push(name);
  };
  const viewer = (answerId: string) => ({ for: 'viewer', answerId }) as const;
  // The first is under way before the others are asked.
  const jobs = [ask('first', viewer('a'))];
  for (const name of ['a1', 'a2', 'a3']) jobs.push(ask(name, viewer('a')));
  jobs.push(ask('b1', viewer('b')), ask('b2', viewer('b')), ask('host', host));
  await Promise.all(jobs);
  expect(order).toEqual(['first', 'host', 'a1', 'b1', 'a2', 'b2', 'a3']);
  await single.close();
});

test('a thread that runs out of memory costs its own job; the other goes on and the next one is served', async () => {
  const small = startEngineThreads({ threads: 2, hashMiB: 1, heapMiB: 12 });
  // A list of moves that does not fit into 12 MiB: the thread dies of this job.
  const moves = Array.from({ length: 1_000_000 }, (_, n) => `move ${n}`);
  const claim = { task: 'mate', movesLeft: 2 } as const;
  const large = { fen: MORPHY.fen, moves, claim, budgets: { proofNodes: 1, budgetNodes: 1 } };
  const [crashed, other] = await Promise.all([
    reasonOf(small.run('judgeMoves', large, { owner: host })),
    small.run('proveMate', { ...MORPHY, moves: 3 }, { owner: host }),
  ]);
  expect(crashed).toBe('crashed');
  expect(other.mateIn).toBe(2);
  expect((await small.run('proveMate', MORPHY, { owner: host })).mateIn).toBe(2);
  await small.close();
});

describe('whatever a job does to its thread costs that job alone', () => {
  const threadFile = new URL('../support/wild-thread.ts', import.meta.url);
  const settings = { threads: 2, heapMiB: 64, memoryMiB: 300, graceMs: 300, threadFile };
  const wild = startEngineThreads(settings);
  afterAll(() => wild.close());
  const ask = (material: string, signal?: AbortSignal) =>
    wild.run('buildTable', { material }, { owner: host, ...(signal === undefined ? {} : { signal }) });

  const DEEDS: readonly [string, RegExp][] = [
    ['grows a list without end', /memory/],
    ['asks for a large list at once', /memory/],
    ['fills buffers that no heap limit sees', /more than 300 MiB of memory/],
    ['grows the memory of a WebAssembly module', /more than 300 MiB of memory/],
    ['exits', /ended with code 7/],
    ['throws where nobody catches', /thrown by a timer/],
    ['is killed by the system', /ended with SIGKILL/],
  ];
  test.each(DEEDS)('it %s', { timeout: 30_000 }, async (deed, why) => {
    const beside = ask('waits a moment');
    const failure = await ask(deed).catch((fault: unknown) => fault);
    if (!(failure instanceof EngineJobError)) throw new Error(`it came out as ${failure}`);
    expect(failure.reason).toBe('crashed');
    expect(failure.message).toMatch(why);
    expect(await beside).toBe(true);
    expect(await Promise.all([ask('nothing'), ask('nothing'), ask('nothing')])).toEqual([true, true, true]);
  });

  test('it throws: our own mistake, told in words, and the thread stays', async () => {
    await expect(ask('throws')).rejects.toThrow('failed: Error: thrown by the job');
    expect(await ask('nothing')).toBe(true);
  });

  test('it never ends and listens to nobody: cancelled, it is ended after its grace', async () => {
    const stop = new AbortController();
    const begun = performance.now();
    const job = reasonOf(ask('never ends', stop.signal));
    const waiting = [ask('nothing'), ask('nothing')];
    expect(await Promise.all(waiting)).toEqual([true, true]);
    stop.abort();
    expect(await job).toBe('cancelled');
    expect(performance.now() - begun).toBeLessThan(10_000);
    expect(await Promise.all([ask('nothing'), ask('nothing')])).toEqual([true, true]);
    expect(wild.load()).toEqual({ waiting: 0, running: 0 });
  });

  test('it knows nothing of our settings', async () => {
    process.env.TAILPIECE_SECRET_FOR_TEST = 'do not tell';
    const fresh = startEngineThreads({ ...settings, threads: 1 });
    const failure = await fresh
      .run('buildTable', { material: 'tells its environment' }, { owner: host })
      .catch((fault: unknown) => String(fault));
    delete process.env.TAILPIECE_SECRET_FOR_TEST;
    await fresh.close();
    expect(failure).toContain('PATH');
    expect(failure).not.toContain('do not tell');
  });
});

test('the processes of a pool end with the process that has it, however that ended', async () => {
  const owner = spawn(process.execPath, [join(import.meta.dirname, '../support/pool-owner.ts')], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const [said] = await once(owner.stdout, 'data');
  const pids = String(said).trim().split(' ').map(Number);
  expect(pids).toHaveLength(2);
  expect(pids.every(isRunning)).toBe(true);
  owner.kill('SIGKILL');
  await once(owner, 'exit');
  await expect.poll(() => pids.filter(isRunning), { timeout: 5000 }).toEqual([]);
});

test('a position that cannot be read is our own mistake: the job fails with words, the thread stays', async () => {
  const job = pool.run('proveMate', { ...MORPHY, fen: 'no position' }, { owner: host });
  await expect(job).rejects.toThrow('Not a position');
  expect(await reasonOf(pool.run('proveMate', MORPHY, { owner: host }))).toBe('done');
});

test('closing ends what runs and what waits', async () => {
  const short = startEngineThreads({ threads: 1, hashMiB: 1 });
  const jobs = [1, 2].map(() => reasonOf(short.run('proveMate', ENDLESS, { owner: host })));
  await short.close();
  expect(await Promise.all(jobs)).toEqual(['closed', 'closed']);
  expect(await reasonOf(short.run('proveMate', MORPHY, { owner: host }))).toBe('closed');
});

test('[V4] a table is built by a thread, and stopped by it', async () => {
  const stop = new AbortController();
  const building = pool.run('buildTable', { material: 'KQKR' }, { owner: host, signal: stop.signal });
  setTimeout(() => stop.abort(), 50);
  expect(['cancelled', 'done']).toContain(await reasonOf(building));
  expect(await pool.run('buildTable', { material: 'KQK' }, { owner: host })).toBe(true);
});
