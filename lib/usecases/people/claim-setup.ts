// The first person with the setup link becomes the owner.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { isZone } from '#lib/kit/zoned-time.ts';
import { sha256 } from '#lib/machine/hash.ts';
import { hashPassword } from '#lib/machine/passwords.ts';
import { isToken } from '#lib/machine/tokens.ts';
import { type CredentialReason, parseCredentials } from '#lib/people/credentials.ts';
import { parseName } from '#lib/people/names.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { addMember } from '#lib/store/members.ts';
import { hasOwner, useSetupLink } from '#lib/store/setup-links.ts';
import { takeShow } from '#lib/store/shows.ts';

/** Why a claim is refused. Unknown, used, voided and ended links look alike. */
export type ClaimReason =
  | CredentialReason
  | { readonly code: 'link-not-valid' }
  | { readonly code: 'has-owner' }
  | { readonly code: 'bad-show-name' }
  | { readonly code: 'bad-zone' }
  | { readonly code: 'name-taken' };

/** Thrown to undo a transaction whose claim is refused after the link was used up in it. */
class Refused extends Error {
  readonly reason: ClaimReason;
  constructor(reason: ClaimReason) {
    super(reason.code);
    this.reason = reason;
  }
}

/**
 * Uses the link and makes show and owner in one transaction: of many claims at once one succeeds. A
 * claim that is refused for its name or password does not use the link up.
 */
export async function claimSetup(claim: {
  readonly token: string;
  readonly signInName: string;
  readonly password: string;
  readonly showName: string;
  readonly zone: string;
  readonly locale: 'en' | 'de';
}): Promise<Result<number, ClaimReason>> {
  if (!isToken(claim.token)) return refuse({ code: 'link-not-valid' });
  const parsed = parseCredentials(claim.signInName, claim.password);
  if (!parsed.ok) return parsed;
  const showName = parseName(claim.showName);
  if (!showName.ok || showName.value === null) return refuse({ code: 'bad-show-name' });
  if (!isZone(claim.zone)) return refuse({ code: 'bad-zone' });
  if (await hasOwner(db())) return refuse({ code: 'has-owner' });
  const passwordHash = await hashPassword(parsed.value.password);
  const show = { name: showName.value, zone: claim.zone, locale: claim.locale };
  try {
    return ok(
      await inTransaction(async (tx) => {
        if (!(await useSetupLink(tx, sha256(claim.token)))) throw new Refused({ code: 'link-not-valid' });
        if (await hasOwner(tx)) throw new Refused({ code: 'has-owner' });
        const showId = await takeShow(tx, show);
        const { signInName } = parsed.value;
        const added = await addMember(tx, { showId, signInName, passwordHash, role: 'owner' });
        if (!added.ok) throw new Refused(added.reason);
        await appendLog(tx, { kind: 'owner-claimed', memberId: added.value });
        return added.value;
      }),
    );
  } catch (error) {
    if (error instanceof Refused) return refuse(error.reason);
    throw error;
  }
}
