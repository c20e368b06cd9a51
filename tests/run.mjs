// `npm test`: installs what is missing, then every check in order, the cheap ones first.
// `npm run validate` (argument "core") stops before what needs a database or a browser.
// Written for Node 20 with built-in modules alone: it is what runs before anything is installed.

import { execFileSync, spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { delimiter, resolve } from 'node:path';

const onlyCore = process.argv.includes('core');
const root = resolve(import.meta.dirname, '..');
process.chdir(root);
mkdirSync('.cache', { recursive: true });
const env = {
  ...process.env,
  PATH: `${resolve('node_modules/.bin')}${delimiter}${process.env.PATH}`,
  FORCE_COLOR: '0',
};
const counts = { passed: 0, failed: 0 };
const times = [];

/** Runs one step, its output passed through; gives its exit code. */
function run(command, args) {
  return new Promise((done) => {
    const child = spawn(command, args, { stdio: 'inherit', env });
    child.once('error', (error) => {
      console.error(`${command}: ${error.message}`);
      done(1);
    });
    child.once('exit', (code) => done(code ?? 1));
  });
}

async function step(name, command, args) {
  const start = Date.now();
  console.log(`\n== ${name}`);
  const code = await run(command, args);
  times.push(`${name} ${((Date.now() - start) / 1000).toFixed(1)} s`);
  if (code !== 0) finish(`${name} failed`);
}

/** Adds up what a JSON report says; a runner that wrote none has failed already. */
function addReport(path) {
  if (!existsSync(path)) return;
  const report = JSON.parse(readFileSync(path, 'utf8'));
  counts.passed += report.numPassedTests ?? report.stats?.expected ?? 0;
  counts.failed += report.numFailedTests ?? report.stats?.unexpected ?? 0;
}

function finish(problem) {
  for (const path of ['.cache/vitest.json', '.cache/playwright.json']) addReport(path);
  console.log(`\n${times.join(', ')}`);
  if (problem) {
    console.error(problem);
    counts.failed = Math.max(1, counts.failed);
  }
  console.log(`tests: ${counts.passed} passed, ${counts.failed} failed`);
  process.exit(problem || counts.failed > 0 ? 1 : 0);
}

/** The same stamp as the start script's: install again only when the lock changed. */
function isInstalled() {
  const stamp = createHash('sha256').update(readFileSync('package-lock.json')).digest('hex');
  const path = 'node_modules/.tailpiece-lock';
  if (existsSync(path) && readFileSync(path, 'utf8') === stamp) return true;
  return { stamp, path };
}

/** Chromium where it is installed, else through apt as root, else through the test tool. */
async function findChromium() {
  const known = [
    process.env.CHROMIUM_PATH,
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
  ];
  if (known.some((path) => path && existsSync(path))) return;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    await step('apt-get update', 'apt-get', ['update', '-qq']);
    await step('install chromium', 'apt-get', ['install', '-y', '-qq', 'chromium']);
    return;
  }
  if ((await run('playwright', ['install', 'chromium'])) !== 0)
    finish('The browser tests need Chromium: install it, or set CHROMIUM_PATH to a Chromium program.');
}

for (const path of ['.cache/vitest.json', '.cache/playwright.json'])
  if (existsSync(path)) execFileSync('rm', [path]);

const installed = isInstalled();
if (installed !== true) {
  await step('install', 'npm', ['ci', '--loglevel=error', '--no-fund', '--no-audit']);
  writeFileSync(installed.path, installed.stamp);
}
await step('build', 'node', ['lib/start/build.ts', ...(onlyCore ? ['kernel', 'prisma', 'men'] : [])]);
await step('lint', 'biome', ['check', '--error-on-warnings', '.']);
await step('types', 'tsc', ['--noEmit']);
const json = ['--reporter=default', '--reporter=json', '--outputFile.json=.cache/vitest.json'];
const needServer = ['store', 'queue', 'usecases', 'jobs', 'app', 'start'].flatMap((room) => [
  '--exclude',
  `tests/${room}/**`,
]);
await step('house, unit and database tests', 'vitest', ['run', ...json, ...(onlyCore ? needServer : [])]);
if (!onlyCore) {
  await findChromium();
  await step('browser tests', 'playwright', ['test']);
}
finish(null);
