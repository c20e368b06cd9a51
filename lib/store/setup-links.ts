// The one-time link of a first start.

import type { Tx } from './client.ts';

/** Is there anybody with rights over the show? */
export async function hasOwner(tx: Tx): Promise<boolean> {
  return (await tx.member.count({ where: { role: 'owner', removedAt: null } })) > 0;
}

/** Voids every former link and makes a new one, valid for 30 minutes. */
export async function renewSetupLink(tx: Tx, tokenHash: string): Promise<void> {
  await voidSetupLinks(tx);
  await tx.$executeRaw`
    insert into setup_link (token_hash, expires_at) values (${tokenHash}, clock_timestamp() + interval '30 minutes')`;
}

/** Voids every link not used yet. */
export async function voidSetupLinks(tx: Tx): Promise<void> {
  await tx.$executeRaw`
    update setup_link set voided_at = clock_timestamp() where used_at is null and voided_at is null`;
}

/** Uses up a link: true once, and only while it is valid. Two at the same time: one of them. */
export async function useSetupLink(tx: Tx, tokenHash: string): Promise<boolean> {
  const count = await tx.$executeRaw`
    update setup_link set used_at = clock_timestamp()
    where token_hash = ${tokenHash} and used_at is null and voided_at is null and expires_at > clock_timestamp()`;
  return count === 1;
}
