// Runs the build steps, all or those named: `npm run build`, `npm run build -- kernel`.

import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildKernel } from './build-kernel.ts';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const asked = process.argv.slice(2);

if (asked.length === 0 || asked.includes('kernel')) {
  process.stdout.write((await buildKernel(root)) ? 'Kernel built.\n' : 'Kernel is up to date.\n');
}
