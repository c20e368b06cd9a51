// Members of a show: who may sign in to the desk, and with what rights.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { parseRole, type Role } from '#lib/people/may.ts';
import type { Tx } from './client.ts';
import { isUniqueViolation } from './unique-violation.ts';

/** A member as the gate sees it; the password's hash is asked for separately. */
export interface MemberRecord {
  readonly id: number;
  readonly showId: number;
  readonly signInName: string;
  readonly role: Role;
  readonly createdAt: Date;
}

const FACE = { id: true, showId: true, signInName: true, role: true, createdAt: true } as const;

/** A member whose rights hold; null for unknown numbers and removed members. */
export async function loadMember(tx: Tx, id: number): Promise<MemberRecord | null> {
  const row = await tx.member.findFirst({ where: { id, removedAt: null }, select: FACE });
  return row === null ? null : { ...row, role: parseRole(row.role) };
}

/** What a sign-in is compared with; null for unknown names and removed members. */
export async function loadPasswordHash(
  tx: Tx,
  signInName: string,
): Promise<{ readonly id: number; readonly passwordHash: string | null } | null> {
  return tx.member.findFirst({
    where: { signInName, removedAt: null },
    select: { id: true, passwordHash: true },
  });
}

/** Members of a show whose rights hold, oldest first. */
export async function listMembers(tx: Tx, showId: number): Promise<MemberRecord[]> {
  const rows = await tx.member.findMany({
    where: { showId, removedAt: null },
    select: FACE,
    orderBy: { id: 'asc' },
  });
  return rows.map((row) => ({ ...row, role: parseRole(row.role) }));
}

/** Adds a member; refused where the sign-in name is taken, also by a member who was removed. */
export async function addMember(
  tx: Tx,
  member: {
    readonly showId: number;
    readonly signInName: string;
    readonly passwordHash: string;
    readonly role: 'owner' | 'helper';
  },
): Promise<Result<number, { readonly code: 'name-taken' }>> {
  try {
    return ok((await tx.member.create({ data: member, select: { id: true } })).id);
  } catch (error) {
    // The sign-in name is the one thing that must be unique here.
    if (isUniqueViolation(error)) return refuse({ code: 'name-taken' });
    throw error;
  }
}

/** Takes a member's rights away; false where there was none such in the show. Owners cannot be removed so. */
export async function removeHelper(tx: Tx, showId: number, memberId: number): Promise<boolean> {
  const count = await tx.$executeRaw`
    update member set removed_at = clock_timestamp()
    where id = ${memberId} and show_id = ${showId} and role = 'helper' and removed_at is null`;
  return count > 0;
}
