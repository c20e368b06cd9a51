// Hashes: SHA-256 for what is public, keyed where the input could be guessed.

import { createHash, createHmac } from 'node:crypto';

/** SHA-256, hexadecimal. */
export function sha256(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

/** HMAC-SHA-256, hexadecimal. */
export function keyedHash(key: string, content: string): string {
  return createHmac('sha256', key).update(content).digest('hex');
}
