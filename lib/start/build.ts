// Runs the build steps, all or those named: `npm run build`, `npm run build -- kernel`. Each is
// skipped where a hash over its inputs says that nothing has changed.

import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildBrowser } from './build-browser.ts';
import { buildClient } from './build-client.ts';
import { buildKernel } from './build-kernel.ts';
import { buildMen } from './build-men.ts';
import { buildPages } from './build-pages.ts';

const STEPS = [
  { name: 'kernel', said: 'engine kernel', run: buildKernel },
  { name: 'prisma', said: 'database client', run: buildClient },
  { name: 'men', said: 'outlines of the men', run: buildMen },
  { name: 'browser', said: 'browser files', run: buildBrowser },
  { name: 'next', said: 'pages', run: buildPages },
] as const;

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const asked = process.argv.slice(2);
const unknown = asked.find((name) => !STEPS.some((step) => step.name === name));
if (unknown !== undefined) {
  process.stderr.write(
    `"${unknown}" is no build step; expected ${STEPS.map((step) => step.name).join(', ')}.\n`,
  );
  process.exit(2);
}

for (const step of STEPS) {
  if (asked.length > 0 && !asked.includes(step.name)) continue;
  const start = Date.now();
  const ran = await step.run(root);
  if (ran) process.stdout.write(`Built the ${step.said} in ${((Date.now() - start) / 1000).toFixed(1)} s.\n`);
  else if (asked.length > 0) process.stdout.write(`The ${step.said} were up to date.\n`);
}
