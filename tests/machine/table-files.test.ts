import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createTableSet } from '#lib/engine/table-set.ts';
import { createTableFiles } from '#lib/machine/table-files.ts';

let directory = '';
beforeEach(() => {
  directory = mkdtempSync(join(tmpdir(), 'tables-'));
});
afterEach(() => {
  rmSync(directory, { recursive: true });
});

test('[V4] a table built once is read from its file afterwards, byte for byte', () => {
  const built = createTableSet(createTableFiles(directory)).values('KQK');
  let saves = 0;
  const files = createTableFiles(directory);
  const again = createTableSet({ load: files.load, save: () => (saves += 1) }).values('KQK');
  expect(saves).toBe(0);
  expect(again).toEqual(built);
});

test('[V4] an absent, cut or damaged file is no table', () => {
  const files = createTableFiles(directory);
  expect(files.load('KQK')).toBeNull();
  createTableSet(files).values('KQK');
  const path = join(directory, 'KQK.table');
  const whole = readFileSync(path);
  writeFileSync(path, whole.subarray(0, whole.length / 2));
  expect(files.load('KQK')).toBeNull();
  const damaged = Buffer.from(whole);
  damaged[damaged.length - 100] = (damaged[damaged.length - 100] ?? 0) ^ 64;
  writeFileSync(path, damaged);
  expect(files.load('KQK')).toBeNull();
});

test('[V4] a disk that takes no table costs no verdict, and leaves no draft', () => {
  const file = join(directory, 'no-folder');
  writeFileSync(file, '');
  expect(createTableSet(createTableFiles(join(file, 'tables'))).values('KQK')).not.toBeNull();
  // A folder in the place of the table: the draft is written, and cannot take that name.
  mkdirSync(join(directory, 'KQK.table', 'full'), { recursive: true });
  expect(createTableSet(createTableFiles(directory)).values('KQK')).not.toBeNull();
  expect(readdirSync(directory).sort()).toEqual(['KQK.table', 'no-folder']);
});
