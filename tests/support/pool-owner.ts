// A process with a pool of two engine threads, both at work without end. It prints their process ids.

import { readdirSync, readFileSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import { startEngineThreads } from '#lib/machine/engine-threads.ts';

const threadFile = new URL('./wild-thread.ts', import.meta.url);
const pool = startEngineThreads({ threads: 2, threadFile });
let begun = 0;
for (let n = 0; n < 2; n += 1) {
  const options = { owner: { for: 'host' }, onProgress: () => (begun += 1) } as const;
  pool.run('buildTable', { material: 'never ends' }, options).catch(() => {});
}
while (begun < 2) await wait(20);

const children = readdirSync('/proc').filter((name) => {
  try {
    return /^\d+$/.test(name) && readFileSync(`/proc/${name}/stat`, 'utf8').includes(` ${process.pid} `);
  } catch {
    return false;
  }
});
console.log(children.filter((pid) => Number(pid) !== process.pid).join(' '));
