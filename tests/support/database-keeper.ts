// Keeps one database server for a test run: started by the first test file that asks, gone when the
// run is. `node database-keeper.ts PID_OF_THE_RUN STATE_FILE`.

import { renameSync, rmSync, writeFileSync } from 'node:fs';
import { isAlive } from '#lib/start/processes.ts';
import { startTestServer } from './start-database.ts';

const owner = Number(process.argv[2]);
const stateFile = process.argv[3] ?? '';

function tell(state: object): void {
  writeFileSync(`${stateFile}.draft`, JSON.stringify(state));
  renameSync(`${stateFile}.draft`, stateFile);
}

try {
  const { server, stop } = await startTestServer();
  tell({ port: server.port, password: server.password });
  const timer = setInterval(async () => {
    if (isAlive(owner)) return;
    clearInterval(timer);
    rmSync(stateFile, { force: true });
    await stop();
    process.exit(0);
  }, 300);
} catch (error) {
  tell({ failure: String(error) });
  process.exit(1);
}
