// Runs the benches, each in a process of its own: `npm run bench`, `npm run bench -- perft mates`.
// Every bench is a file of this folder; its name is the file's name.

import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { cpus, loadavg, totalmem } from 'node:os';
import { join } from 'node:path';
import { ensureKernel } from '#lib/machine/ensure-kernel.ts';

const folder = import.meta.dirname;
const known = readdirSync(folder)
  .filter((name) => name.endsWith('.ts') && name !== 'run.ts')
  .map((name) => name.slice(0, -3));
const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !known.includes(name));
if (unknown.length > 0) {
  process.stderr.write(`No bench is called ${unknown.join(', ')}. There are: ${known.join(', ')}\n`);
  process.exit(2);
}
await ensureKernel();
const [cpu] = cpus();
const memory = Math.round(totalmem() / 2 ** 30);
process.stdout.write(
  `${cpu?.model ?? 'unknown processor'}, ${cpus().length} cores, ${memory} GiB, Node ${process.version}, load ${loadavg()[0]?.toFixed(1)}\n`,
);
let failed = 0;
for (const name of asked.length > 0 ? asked : known) {
  process.stdout.write(`\n== ${name}\n`);
  const { status } = spawnSync(process.execPath, [join(folder, `${name}.ts`)], { stdio: 'inherit' });
  if (status !== 0) failed += 1;
}
process.exit(failed === 0 ? 0 : 1);
