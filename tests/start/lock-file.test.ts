import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { announceInLock, dropLock, takeLock } from '#lib/start/lock-file.ts';

const folder = mkdtempSync(join(tmpdir(), 'tailpiece-lock-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const isOurs = (command: string): boolean => command.includes('setInterval');

test('a living holder is told with its address, and keeps the lock', () => {
  const file = join(folder, 'living.lock');
  const other = spawn(process.execPath, ['-e', 'setInterval(() => {}, 1000)']);
  try {
    writeFileSync(file, JSON.stringify({ pid: other.pid, publicUrl: 'http://127.0.0.1:8471' }));
    expect(takeLock(file, isOurs)).toEqual({ pid: other.pid, publicUrl: 'http://127.0.0.1:8471' });
    dropLock(file);
    expect(JSON.parse(readFileSync(file, 'utf8'))).toMatchObject({ pid: other.pid });
  } finally {
    other.kill('SIGKILL');
  }
});

test('the lock of a dead process is taken over, and so is one whose number another program has now', async () => {
  const file = join(folder, 'dead.lock');
  const dead = spawn(process.execPath, ['-e', '']);
  await once(dead, 'exit');
  for (const holder of [
    { pid: dead.pid, publicUrl: null },
    { pid: process.ppid, publicUrl: null },
  ]) {
    writeFileSync(file, JSON.stringify(holder));
    expect(takeLock(file, isOurs)).toBeNull();
    expect(JSON.parse(readFileSync(file, 'utf8'))).toMatchObject({ pid: process.pid });
  }
});

test('a lock that was cut off in writing counts as nobody’s; ours carries the address and can be given back', () => {
  const file = join(folder, 'cut.lock');
  writeFileSync(file, '{"pid": 1');
  expect(takeLock(file, isOurs)).toBeNull();
  announceInLock(file, 'http://127.0.0.1:1');
  expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual({
    pid: process.pid,
    publicUrl: 'http://127.0.0.1:1',
  });
  dropLock(file);
  expect(() => readFileSync(file)).toThrow();
});
