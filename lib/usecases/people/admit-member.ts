// The sign-in gate: a member's number from the session becomes a host with rights. Asked at every
// request, so that rights taken away are gone at the next one (trust test A11).

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { type DeskDeed, may, type Role } from '#lib/people/may.ts';
import { db } from '#lib/store/client.ts';
import { loadMember } from '#lib/store/members.ts';
import { loadShow } from '#lib/store/shows.ts';

declare const admitted: unique symbol;

/** The number of a member whose rights were checked for this request; only the gate makes one. */
export type HostId = number & { readonly [admitted]: true };

/** Who is at the desk. */
export interface Host {
  readonly id: HostId;
  readonly showId: number;
  readonly showName: string;
  readonly zone: string;
  readonly locale: 'en' | 'de';
  readonly role: Role;
  readonly signInName: string;
}

/** Why somebody is not let in, or not to a deed. */
export type GateReason =
  | { readonly code: 'not-signed-in' }
  | { readonly code: 'no-right'; readonly deed: DeskDeed };

/** Lets a member in for a deed, or says why not. Null is a request without a session. */
export async function admitMember(
  memberId: number | null,
  deed: DeskDeed = 'look-at-desk',
): Promise<Result<Host, GateReason>> {
  const member = memberId === null ? null : await loadMember(db(), memberId);
  const show = member === null ? null : await loadShow(db(), member.showId);
  if (member === null || show === null) return refuse({ code: 'not-signed-in' });
  if (!may(member.role, deed)) return refuse({ code: 'no-right', deed });
  return ok({
    id: member.id as HostId,
    showId: member.showId,
    showName: show.name,
    zone: show.zone,
    locale: show.locale,
    role: member.role,
    signInName: member.signInName,
  });
}
