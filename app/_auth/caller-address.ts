import { config } from '#lib/machine/config.ts';

/**
 * The caller's address as far as it can be believed. The web server puts the socket's address into
 * `x-forwarded-for` where there is none; with proxies in front, the entry that the outermost believed
 * one wrote counts. Without a believed proxy a forged header can name any address: limits by address
 * are then a courtesy, and limits by name hold.
 */
export function callerAddress(headers: Headers): string {
  const hops = (headers.get('x-forwarded-for') ?? '').split(',').map((hop) => hop.trim());
  const believed = config().trustProxy;
  return hops.at(-Math.max(1, believed)) ?? hops[0] ?? '';
}
