// `npm start`: the first lines, for Node 20 and built-in modules alone. Installs what is missing,
// then hands over to the pinned Node, which runs the supervisor.

import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const major = Number(process.versions.node.split('.')[0]);
if (major < 20) {
  console.error(`Tailpiece needs Node 20 or newer to start; this is ${process.versions.node}.`);
  process.exit(1);
}

/** Installs again only when the lock file has changed since. */
function installWhatIsMissing() {
  const lock = createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');
  const stamp = join(root, 'node_modules', '.tailpiece-lock');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === lock) return;
  console.log('Installing what is missing (once; a minute or so) ...');
  const words = ['ci', '--no-audit', '--no-fund', '--loglevel=error'];
  const npm = process.env.npm_execpath;
  const done = npm?.endsWith('.js')
    ? spawnSync(process.execPath, [npm, ...words], { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] })
    : spawnSync('npm', words, {
        cwd: root,
        stdio: ['ignore', 'inherit', 'inherit'],
        shell: process.platform === 'win32',
      });
  if (done.status !== 0) {
    console.error('Installing failed: npm says why above. Run `npm ci`, then `npm start` again.');
    process.exit(1);
  }
  writeFileSync(stamp, lock);
}

installWhatIsMissing();
const pinned = join(root, 'node_modules', 'node', 'bin', process.platform === 'win32' ? 'node.exe' : 'node');
if (!existsSync(pinned)) {
  console.error(`The pinned Node is missing (${pinned}). Run \`npm ci\`, then \`npm start\` again.`);
  process.exit(1);
}

const child = spawn(pinned, [join(root, 'lib/start/supervisor.ts'), ...process.argv.slice(2)], {
  cwd: root,
  stdio: ['inherit', 'inherit', 'inherit', 'ipc'],
});
// Ctrl-C reaches the supervisor by itself, being in the same terminal; a signal sent to us is passed on.
process.on('SIGINT', () => {});
for (const signal of ['SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
// npm does not pass signals on; when it goes, so do we.
if (process.env.npm_lifecycle_event === 'start') {
  const parent = process.ppid;
  setInterval(() => {
    if (process.ppid !== parent) child.kill('SIGTERM');
  }, 500).unref();
}
child.once('exit', (code, signal) => process.exit(code ?? (signal ? 1 : 0)));
