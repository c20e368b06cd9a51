// The thread in which the engine of a UCI conversation thinks. Lines come through its port, and are taken
// from it in the midst of a search too: the command line reads them meanwhile.

import { parentPort, receiveMessageOnPort } from 'node:worker_threads';
import { createEngine } from '#lib/engine/create-engine.ts';
import { createUciSession } from '#lib/engine/uci-protocol.ts';

const port = parentPort;
if (port === null) throw new Error('uci-thread.ts runs as a worker thread only');

const session = createUciSession(createEngine(), {
  say: (line) => port.postMessage(line),
  listen() {
    for (let next = receiveMessageOnPort(port); next !== undefined; next = receiveMessageOnPort(port)) {
      take(next.message);
    }
  },
});

/** A line, or null where no more will come. */
function take(line: string | null): void {
  if (line === null) session.end();
  else session.handle(line);
}

port.on('message', (line: string | null) => {
  take(line);
  session.work();
  if (session.isOver()) port.close();
});
