import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { MEN_OUTLINES } from '#lib/pictures/inner/men-outlines.ts';
import { readManifest } from '#lib/start/build-browser.ts';
import { buildOnce } from '#lib/start/inner/build-stamp.ts';
import { PROJECT } from '../support/start-database.ts';

test('the manifest names files that are there, the hash of the content in every name', () => {
  const manifest = readManifest(PROJECT);
  expect(Object.keys(manifest)).toEqual(expect.arrayContaining(['board.js', 'public.css', 'desk.css']));
  for (const [name, file] of Object.entries(manifest)) {
    expect(file).toMatch(/\.[A-Z0-9]{8}\.(js|css|woff2)$/);
    expect(existsSync(join(PROJECT, 'public', 'built', file)), name).toBe(true);
  }
});

test('the board knows rules and nothing of reading, engine or book', () => {
  const script = readFileSync(
    join(PROJECT, 'public', 'built', readManifest(PROJECT)['board.js'] ?? ''),
    'utf8',
  );
  expect(script).toContain('tailpiece-board');
  expect(script).not.toMatch(/WebAssembly|budgetNodes|proofNodes|Läufer|верн/);
});

test('the outlines of all six men were taken from the font', () => {
  expect(Object.keys(MEN_OUTLINES).sort()).toEqual(['b', 'k', 'n', 'p', 'q', 'r']);
  for (const outline of Object.values(MEN_OUTLINES)) expect(outline).toMatch(/^m[\d.]+[ -][\d.]+l?[a-z]?/);
});

test('a step runs once for the same inputs, again for others, and again where its output is gone', async () => {
  const root = mkdtempSync(join(tmpdir(), 'tailpiece-build-'));
  try {
    writeFileSync(join(root, 'in'), 'one');
    const step = { root, name: 'trial', files: ['in'], outputs: ['out'] };
    let runs = 0;
    const run = () =>
      buildOnce(step, () => {
        runs += 1;
        writeFileSync(join(root, 'out'), String(runs));
      });
    expect(await run()).toBe(true);
    expect(await run()).toBe(false);
    writeFileSync(join(root, 'in'), 'two');
    expect(await run()).toBe(true);
    rmSync(join(root, 'out'));
    expect(await run()).toBe(true);
    expect(runs).toBe(3);
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
});
