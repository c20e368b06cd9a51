// `uci`: our engine behind the UCI protocol, for any chess program or test bench. The engine thinks in a
// thread of its own, so that a line is heard whatever it is doing.

import { once } from 'node:events';
import { Worker } from 'node:worker_threads';
import { ensureKernel } from '#lib/machine/ensure-kernel.ts';
import { textLines } from '#lib/machine/text-lines.ts';

export async function runUci(): Promise<number> {
  await ensureKernel();
  const thread = new Worker(new URL('./inner/uci-thread.ts', import.meta.url));
  thread.on('message', (line: string) => process.stdout.write(`${line}\n`));
  const hasEnded = once(thread, 'exit');
  const listening = passOn(thread).catch((fault: unknown) => {
    // Where the thread has gone, the input is closed under the reader's hands.
    if (!process.stdin.destroyed) throw fault;
  });
  try {
    await hasEnded;
  } finally {
    process.stdin.destroy();
  }
  await listening;
  return 0;
}

async function passOn(thread: Worker): Promise<void> {
  for await (const read of textLines(process.stdin)) {
    if ('text' in read) thread.postMessage(read.text);
    else process.stdout.write(`info string line ${read.line} is no command (${read.fault})\n`);
  }
  thread.postMessage(null);
}
