// Hashes of passwords: argon2id, slow on purpose.

import { hash, verify } from '@node-rs/argon2';

// Compared with where there is no such member, so that both cases cost the same time.
const NOBODY =
  '$argon2id$v=19$m=19456,t=2,p=1$c29tZXRoaW5nIHNhbHR5$SrJFoIW4hyfkC9rGJnkJtnXlvhgHu6k2hWqpTQGAVqE';

/** The hash of a password, salt and settings in it; about 30 ms of a core. */
export function hashPassword(password: string): Promise<string> {
  return hash(password);
}

/** Whether the password belongs to the hash; the same work where there is no hash. */
export async function isPassword(stored: string | null, password: string): Promise<boolean> {
  const isRight = await verify(stored ?? NOBODY, password).catch(() => false);
  return isRight && stored !== null;
}
