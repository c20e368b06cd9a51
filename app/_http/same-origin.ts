import { config } from '#lib/machine/config.ts';

/**
 * Does a changing request come from a page of ours? Browsers say so in Sec-Fetch-Site, else in Origin. A page
 * that keeps its address to itself sends Origin `null`: then only Sec-Fetch-Site can vouch. JSON without either
 * comes from a program: no foreign page can send that type without asking first.
 */
export function isFromOwnPage(request: Request, isJson: boolean): boolean {
  const origin = request.headers.get('origin');
  const site = request.headers.get('sec-fetch-site');
  if (site !== null && site !== 'same-origin') return false;
  if (origin === null) return site === 'same-origin' || isJson;
  if (origin === 'null') return site === 'same-origin';
  return ownOrigins(request).includes(origin);
}

function ownOrigins(request: Request): string[] {
  const host = request.headers.get('host');
  const own = new URL(config().publicUrl).origin;
  return host === null ? [own] : [own, `http://${host}`, `https://${host}`];
}
