// Tokens that open something: 128 random bits, kept by us only as a keyed hash.

import { createHmac, randomBytes } from 'node:crypto';
import { keyedHash } from './hash.ts';
import { secretFor } from './secrets.ts';

/** 128 random bits as 22 characters of base64url. */
export function randomToken(): string {
  return randomBytes(16).toString('base64url');
}

/** Has the text the form of a token? */
export function isToken(text: string): boolean {
  return /^[A-Za-z0-9_-]{22}$/.test(text);
}

/**
 * The receipt's token that belongs to a sending. Derived from the sender's own random key, so that a
 * repeated sending gets the same receipt although only a hash of it is stored.
 */
export function receiptTokenFor(clientKey: string): string {
  return createHmac('sha256', secretFor('receipt'))
    .update(clientKey)
    .digest()
    .subarray(0, 16)
    .toString('base64url');
}

/** What is stored of a receipt's token. */
export function receiptHash(token: string): string {
  return keyedHash(secretFor('receipt'), `receipt ${token}`);
}

/** What is stored of a device cookie. */
export function deviceHash(token: string): string {
  return keyedHash(secretFor('device'), token);
}
