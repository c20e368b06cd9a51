// The program's secrets: one master, made at first start into the data folder, mode 600; the others
// are derived from it. Several machines on one database share it by TAILPIECE_SECRET.

import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { config } from './config.ts';
import { keyedHash } from './hash.ts';

const STORED = z.object({
  v: z.literal(1),
  master: z.string().min(32),
  databasePassword: z.string().min(16),
});

/** Secrets as stored. */
export type StoredSecrets = z.infer<typeof STORED>;

/** Reads the secrets of a data folder, making them at the first call. */
export function loadSecrets(dataDir: string): StoredSecrets {
  const file = join(dataDir, 'secrets.json');
  if (existsSync(file)) {
    const read = STORED.safeParse(JSON.parse(readFileSync(file, 'utf8')));
    if (read.success) return read.data;
    throw new Error(`${file} does not hold the secrets of this program. Restore it from a backup.`);
  }
  const made: StoredSecrets = {
    v: 1,
    master: randomBytes(32).toString('base64url'),
    databasePassword: randomBytes(24).toString('base64url'),
  };
  // Passable, not readable: the database's user must get to its folder below.
  mkdirSync(dataDir, { recursive: true, mode: 0o711 });
  const draft = `${file}.${process.pid}`;
  writeFileSync(draft, `${JSON.stringify(made)}\n`, { mode: 0o600 });
  renameSync(draft, file);
  return made;
}

let master: string | null = null;

/** A key for one purpose; another purpose gets an unrelated one. */
export function secretFor(purpose: 'receipt' | 'device' | 'session' | 'address' | 'form'): string {
  master ??= config().secret ?? loadSecrets(config().dataDir).master;
  return keyedHash(master, `tailpiece ${purpose}`);
}
