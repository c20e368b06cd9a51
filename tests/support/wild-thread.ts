// A thread of the engine pool whose jobs do harm: what is done stands where the name of a table would.

import { setTimeout as wait } from 'node:timers/promises';
import { parentPort } from 'node:worker_threads';

const kept: unknown[] = [];

const DEEDS: Readonly<Record<string, () => unknown>> = {
  nothing: () => true,
  'waits a moment': () => wait(300),
  throws() {
    throw new Error('thrown by the job');
  },
  'throws where nobody catches'() {
    setTimeout(() => {
      throw new Error('thrown by a timer');
    });
    return wait(60_000);
  },
  'never ends'() {
    for (;;) kept.length = 0;
  },
  'grows a list without end'() {
    for (;;) kept.push({ n: kept.length });
  },
  'asks for a large list at once'() {
    kept.push(Array.from({ length: 1 }).concat(new Array(100_000_000).fill(0.5)));
    return wait(60_000);
  },
  async 'fills buffers that no heap limit sees'() {
    for (;;) {
      kept.push(Buffer.alloc(1_000_000, 1));
      await wait(1);
    }
  },
  async 'grows the memory of a WebAssembly module'() {
    const memory = new WebAssembly.Memory({ initial: 1, maximum: 60_000 });
    for (;;) {
      const from = memory.grow(100) * 65_536;
      new Uint8Array(memory.buffer, from).fill(1);
      await wait(5);
    }
  },
  exits: () => process.exit(7),
  'is killed by the system'() {
    process.kill(process.pid, 'SIGKILL');
    return wait(60_000);
  },
  'tells its environment'() {
    throw new Error(JSON.stringify(process.env));
  },
};

parentPort?.on('message', async ({ id, input }: { id: number; input: { material: string } }) => {
  parentPort?.postMessage({
    kind: 'progress',
    id,
    progress: { stage: 'table', done: 0, total: 1, nodes: 0 },
  });
  try {
    await DEEDS[input.material]?.();
    parentPort?.postMessage({ kind: 'done', id, output: true, wasStopped: false });
  } catch (fault) {
    parentPort?.postMessage({ kind: 'failed', id, message: String(fault) });
  }
});
