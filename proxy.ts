import { type NextRequest, NextResponse } from 'next/server';

// The policy of the desk, with a fresh nonce a request. Rights are not checked here but next to the
// data: this file may be missing and nothing leaks.

export const config = {
  matcher: ['/desk', '/desk/:path*', { source: '/:path*', has: [{ type: 'header', key: 'next-action' }] }],
};

export function proxy(request: NextRequest): NextResponse {
  const isDesk = /^\/desk(\/|$)/.test(request.nextUrl.pathname);
  // Public pages own no actions; a foreign or nameless page may not change anything at the desk.
  if (!isDesk) return new NextResponse(null, { status: 404 });
  if (request.method !== 'GET' && request.method !== 'HEAD' && !isFromOwnPage(request)) {
    return new NextResponse('This request does not come from a page of the desk.\n', { status: 403 });
  }
  const nonce = Buffer.from(crypto.getRandomValues(new Uint8Array(16))).toString('base64');
  const policy = policyWith(nonce);
  const headers = new Headers(request.headers);
  headers.set('x-nonce', nonce);
  headers.set('content-security-policy', policy);
  const response = NextResponse.next({ request: { headers } });
  response.headers.set('Content-Security-Policy', policy);
  response.headers.set('Cache-Control', 'private, no-store');
  response.headers.set('Referrer-Policy', 'same-origin');
  response.headers.set('X-Content-Type-Options', 'nosniff');
  response.headers.set('Cross-Origin-Opener-Policy', 'same-origin');
  response.headers.set('Permissions-Policy', 'camera=(), geolocation=(), microphone=(), browsing-topics=()');
  return response;
}

function policyWith(nonce: string): string {
  const isDevelopment = process.env.NODE_ENV === 'development';
  return [
    "default-src 'none'",
    `script-src 'nonce-${nonce}' 'strict-dynamic'${isDevelopment ? " 'unsafe-eval'" : ''}`,
    `style-src 'self' ${isDevelopment ? "'unsafe-inline'" : `'nonce-${nonce}'`}`,
    "font-src 'self'",
    "img-src 'self' data:",
    "connect-src 'self'",
    "form-action 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "frame-ancestors 'none'",
  ].join('; ');
}

function isFromOwnPage(request: NextRequest): boolean {
  const origin = URL.parse(request.headers.get('origin') ?? '');
  const site = request.headers.get('sec-fetch-site');
  return origin?.host === request.headers.get('host') && (site === null || site === 'same-origin');
}
