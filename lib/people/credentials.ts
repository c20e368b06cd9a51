// What a sign-in name and a password must be like.

import { ok, type Result, refuse } from '#lib/kit/result.ts';

/** Shortest and longest password, in UTF-16 units. Length alone makes it strong; no signs are demanded. */
export const PASSWORD_LENGTHS = { least: 12, most: 200 } as const;

/** Why a sign-in name or a password is not taken. */
export type CredentialReason =
  | { readonly code: 'bad-sign-in-name' }
  | { readonly code: 'password-too-short'; readonly least: number }
  | { readonly code: 'password-too-long'; readonly most: number }
  | { readonly code: 'password-is-name' };

/** A sign-in name as stored: lower case, 2 to 40 of a-z, digits, dot, hyphen, underscore; null where it is none. */
export function parseSignInName(text: string): string | null {
  const name = text.trim().toLowerCase();
  return /^[a-z0-9][a-z0-9._-]{1,39}$/.test(name) ? name : null;
}

/** Checks what a new member picked. The password is taken as typed, NFC, blanks and all. */
export function parseCredentials(
  signInName: string,
  password: string,
): Result<{ readonly signInName: string; readonly password: string }, CredentialReason> {
  const name = parseSignInName(signInName);
  if (name === null) return refuse({ code: 'bad-sign-in-name' });
  const { least, most } = PASSWORD_LENGTHS;
  if (password.length < least) return refuse({ code: 'password-too-short', least });
  if (password.length > most) return refuse({ code: 'password-too-long', most });
  if (password.toLowerCase().includes(name) && name.length >= 6) return refuse({ code: 'password-is-name' });
  return ok({ signInName: name, password: password.normalize('NFC') });
}
