// Hashes: SHA-256 for what is public, keyed where the input could be guessed.

import { createHash, createHmac, timingSafeEqual } from 'node:crypto';

/** SHA-256, hexadecimal. */
export function sha256(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

/** HMAC-SHA-256, hexadecimal. */
export function keyedHash(key: string, content: string): string {
  return createHmac('sha256', key).update(content).digest('hex');
}

/** Compares in a time that does not depend on where the texts differ. */
export function isSameSecret(one: string, other: string): boolean {
  const a = createHash('sha256').update(one).digest();
  const b = createHash('sha256').update(other).digest();
  return timingSafeEqual(a, b);
}
