// The owner lets helpers in and takes their rights away.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { hashPassword } from '#lib/machine/passwords.ts';
import { type CredentialReason, parseCredentials } from '#lib/people/credentials.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { addMember, listMembers, type MemberRecord, removeHelper } from '#lib/store/members.ts';

/** Members of a show whose rights hold. */
export function showMembers(showId: number): Promise<MemberRecord[]> {
  return listMembers(db(), showId);
}

/** Adds a helper with a first password, which the owner hands over. */
export async function addHelper(helper: {
  readonly showId: number;
  readonly memberId: number;
  readonly signInName: string;
  readonly password: string;
}): Promise<Result<number, CredentialReason | { readonly code: 'name-taken' }>> {
  const parsed = parseCredentials(helper.signInName, helper.password);
  if (!parsed.ok) return parsed;
  const passwordHash = await hashPassword(parsed.value.password);
  const { showId, memberId } = helper;
  const { signInName } = parsed.value;
  try {
    return await inTransaction(async (tx) => {
      const added = await addMember(tx, { showId, signInName, passwordHash, role: 'helper' });
      if (!added.ok) throw new NameTaken();
      await appendLog(tx, { kind: 'member-added', memberId, details: { subject: added.value } });
      return added;
    });
  } catch (error) {
    if (error instanceof NameTaken) return refuse({ code: 'name-taken' });
    throw error;
  }
}

/** Takes a helper's rights away; they end at the helper's next request. */
export function removeMember(deed: {
  readonly showId: number;
  readonly memberId: number;
  readonly subject: number;
}): Promise<Result<null, { readonly code: 'no-such-helper' }>> {
  const { showId, memberId, subject } = deed;
  return inTransaction(async (tx) => {
    if (!(await removeHelper(tx, showId, subject))) return refuse({ code: 'no-such-helper' } as const);
    await appendLog(tx, { kind: 'member-removed', memberId, details: { subject } });
    return ok(null);
  });
}

/** Ends a transaction whose name is taken. */
class NameTaken extends Error {}
