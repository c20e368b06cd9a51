import { cookies, headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { getServerSession } from 'next-auth';
import { cache } from 'react';
import type { DeskDeed } from '#lib/people/may.ts';
import { admitMember, type Host } from '#lib/usecases/people/admit-member.ts';
import { authOptions, cookieNames } from './auth-options.ts';

/** The member's number that the request's cookie carries; null without a valid one. */
const sessionMember = cache(async (): Promise<number | null> => {
  const session: unknown = await getServerSession(authOptions());
  if (typeof session !== 'object' || session === null || !('memberId' in session)) return null;
  return typeof session.memberId === 'number' && Number.isSafeInteger(session.memberId)
    ? session.memberId
    : null;
});

/** Who asks, for pages: without a sign-in on to the sign-in page, without the right back to the desk. */
export async function requireHost(deed: DeskDeed = 'look-at-desk'): Promise<Host> {
  const admitted = await admitMember(await sessionMember(), deed);
  if (admitted.ok) return admitted.value;
  redirect(admitted.reason.code === 'no-right' ? '/desk?trouble=no-right' : '/desk/sign-in');
}

/** Who asks, for route handlers: null where nobody with the right does. */
export async function findHost(deed: DeskDeed = 'look-at-desk'): Promise<Host | null> {
  const admitted = await admitMember(await sessionMember(), deed);
  return admitted.ok ? admitted.value : null;
}

/**
 * Who does a deed, for server actions: also looks whether the request comes from a page of ours,
 * because the framework lets a request without an Origin through.
 */
export async function requireDoer(deed: DeskDeed): Promise<Host> {
  await requireOwnPage();
  return requireHost(deed);
}

/** Ends a changing request that a page of ours did not send. */
export async function requireOwnPage(): Promise<void> {
  const asked = await headers();
  const origin = URL.parse(asked.get('origin') ?? '');
  const site = asked.get('sec-fetch-site');
  if (origin?.host !== asked.get('host') || (site !== null && site !== 'same-origin')) {
    throw new Error('a request from a foreign page was refused');
  }
}

/** What a form needs to be believed by the sign-in: the token whose twin lies in the cookie; null before there is one. */
export async function formToken(): Promise<string | null> {
  const value = (await cookies()).get(cookieNames().form)?.value;
  return value?.split('|')[0] ?? null;
}
