// Every public reply leaves through here: one policy, one set of headers, own cache rules.

const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self' data:; form-action 'self'; connect-src 'self'; base-uri 'none'; frame-ancestors 'none'";
const PICTURE_POLICY = "default-src 'none'; sandbox";

/** How long others may keep a reply: not at all, or shared caches for so many seconds. */
export type Keeping = 'nobody' | { readonly seconds: number };

const MOST_SECONDS = 60;

/** Seconds that a page may be kept: up to a minute, never past its next change. */
export function untilChange(now: Date, changes: readonly (Date | null)[]): Keeping {
  const ahead = changes
    .filter((moment) => moment !== null)
    .map((moment) => Math.ceil((moment.getTime() - now.getTime()) / 1000))
    .filter((seconds) => seconds > 0);
  return { seconds: Math.min(MOST_SECONDS, ...ahead) };
}

/** Headers that every public reply carries. */
export function commonHeaders(keeping: Keeping): Headers {
  return new Headers({
    'Cache-Control':
      keeping === 'nobody'
        ? 'private, no-store'
        : `public, max-age=0, s-maxage=${keeping.seconds}, must-revalidate`,
    'X-Content-Type-Options': 'nosniff',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Permissions-Policy': 'camera=(), geolocation=(), microphone=(), browsing-topics=()',
    'Strict-Transport-Security': 'max-age=31536000',
    'Referrer-Policy': 'same-origin',
    Vary: 'Accept, Accept-Language',
  });
}

/** A page. `isSecret`: its address is a key, which no other place may learn. */
export function htmlReply(
  html: string,
  { status = 200, keeping, isSecret = false }: { status?: number; keeping: Keeping; isSecret?: boolean },
): Response {
  const headers = commonHeaders(keeping);
  headers.set('Content-Type', 'text/html; charset=utf-8');
  headers.set('Content-Security-Policy', POLICY);
  if (isSecret) {
    headers.set('Referrer-Policy', 'no-referrer');
    headers.set('X-Robots-Tag', 'noindex, nofollow');
  }
  return new Response(html, { status, headers });
}

/** Data for programs; the same keeping as the page it stands for. */
export function jsonReply(
  body: unknown,
  { status = 200, keeping }: { status?: number; keeping: Keeping },
): Response {
  const headers = commonHeaders(keeping);
  headers.set('Content-Type', 'application/json; charset=utf-8');
  headers.set('Content-Security-Policy', PICTURE_POLICY);
  return new Response(JSON.stringify(body), { status, headers });
}

/** A picture, drawn or rasterised. Opened by itself it may run and fetch nothing. */
export function pictureReply(
  body: string | Uint8Array<ArrayBuffer>,
  type: string,
  keeping: Keeping,
): Response {
  const headers = commonHeaders(keeping);
  headers.set('Content-Type', type);
  headers.set('Content-Security-Policy', PICTURE_POLICY);
  headers.set('Cross-Origin-Resource-Policy', 'cross-origin');
  return new Response(body, { headers });
}

/** On to another page after a form (303, so that going back never sends twice). */
export function seeOther(path: string): Response {
  const headers = commonHeaders('nobody');
  headers.set('Location', path);
  headers.set('Referrer-Policy', 'no-referrer');
  return new Response(null, { status: 303, headers });
}
