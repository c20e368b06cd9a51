// A member signs in with name and password.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { keyedHash } from '#lib/machine/hash.ts';
import { isPassword } from '#lib/machine/passwords.ts';
import { secretFor } from '#lib/machine/secrets.ts';
import { parseSignInName } from '#lib/people/credentials.ts';
import { db } from '#lib/store/client.ts';
import { loadPasswordHash } from '#lib/store/members.ts';
import { forgetTurns, type Limit, takeTurn } from '#lib/store/rate-limits.ts';

/** Why nobody was signed in. One reason for a wrong name and a wrong password, on purpose. */
export type SignInReason =
  | { readonly code: 'wrong-name-or-password' }
  | { readonly code: 'too-many-tries'; readonly waitSeconds: number };

const PER_NAME: Limit = { name: 'sign-in-name', turns: 10, seconds: 900, pauseSeconds: 900 };
const PER_ADDRESS: Limit = { name: 'sign-in-address', turns: 30, seconds: 900 };

/** The key that session tokens are sealed with. */
export function sessionSecret(): string {
  return secretFor('session');
}

/**
 * Compares name and password; gives the member's number. The limits are asked before the password is
 * hashed, because hashing is slow and would itself be a target. `address` is the caller's, kept as a keyed hash.
 */
export async function signIn(tried: {
  readonly name: string;
  readonly password: string;
  readonly address: string;
}): Promise<Result<number, SignInReason>> {
  const name = parseSignInName(tried.name);
  const key = (text: string): string => keyedHash(secretFor('address'), text).slice(0, 32);
  const nameKey = key(`name ${name ?? tried.name.slice(0, 40)}`);
  const waits = [
    await takeTurn(PER_ADDRESS, key(`address ${tried.address}`)),
    await takeTurn(PER_NAME, nameKey),
  ];
  const waitSeconds = Math.max(...waits);
  if (waitSeconds > 0) return refuse({ code: 'too-many-tries', waitSeconds });
  const member = name === null ? null : await loadPasswordHash(db(), name);
  const password = tried.password.slice(0, 400).normalize('NFC');
  const isRight = await isPassword(member?.passwordHash ?? null, password);
  if (!isRight || member === null) return refuse({ code: 'wrong-name-or-password' });
  await forgetTurns(PER_NAME, nameKey);
  return ok(member.id);
}
