// The web process: serves what the build made.

import { createServer } from 'node:http';
import { join } from 'node:path';
import next from 'next';
import { config } from '#lib/machine/config.ts';
import { followParent, sayReady } from '#lib/machine/follow-parent.ts';
import { log } from '#lib/machine/log.ts';

const { host, port } = config();
const app = next({ dev: false, dir: join(import.meta.dirname, '../..'), hostname: host, port });
await app.prepare();
const answer = app.getRequestHandler();
const server = createServer(
  { maxHeaderSize: 16_384, headersTimeout: 10_000, requestTimeout: 30_000, keepAliveTimeout: 5_000 },
  (request, response) => {
    answer(request, response).catch((error: unknown) => {
      log().error({ problem: String(error) }, 'a request failed');
      if (!response.headersSent) response.writeHead(500);
      response.end();
    });
  },
);
followParent(
  () =>
    new Promise((resolve) => {
      server.close(() => resolve());
      server.closeIdleConnections();
    }),
);
server.once('error', (error) => {
  log().error({ problem: error.message }, 'the web process cannot listen');
  process.exit(1);
});
server.listen(port, host, sayReady);
