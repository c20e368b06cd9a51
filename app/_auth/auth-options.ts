import type { NextAuthOptions } from 'next-auth';
import CredentialsProvider from 'next-auth/providers/credentials';
import { config } from '#lib/machine/config.ts';
import { sessionSecret, signIn } from '#lib/usecases/people/sign-in.ts';
import { callerAddress } from './caller-address.ts';

const DAY_SECONDS = 24 * 60 * 60;

/** Names of the cookies; https addresses get the prefixes that browsers enforce. */
export function cookieNames(): { readonly session: string; readonly form: string; readonly back: string } {
  const prefix = isSecure() ? '__Host-' : '';
  return {
    session: `${prefix}tailpiece.desk`,
    form: `${prefix}tailpiece.form`,
    back: `${prefix}tailpiece.back`,
  };
}

function isSecure(): boolean {
  return config().publicUrl.startsWith('https:');
}

/**
 * Settings of the sign-in: name and password, a sealed cookie that carries the member's number and
 * nothing else. Made at each call, because settings and secrets are read when first needed.
 */
export function authOptions(): NextAuthOptions {
  // The library reads its own address from here, and from nowhere else.
  process.env.NEXTAUTH_URL ??= config().publicUrl;
  const names = cookieNames();
  const options = { httpOnly: true, sameSite: 'lax', path: '/', secure: isSecure() } as const;
  return {
    secret: sessionSecret(),
    session: { strategy: 'jwt', maxAge: 14 * DAY_SECONDS, updateAge: DAY_SECONDS },
    pages: { signIn: '/desk/sign-in', signOut: '/desk', error: '/desk/sign-in' },
    cookies: {
      sessionToken: { name: names.session, options },
      csrfToken: { name: names.form, options },
      callbackUrl: { name: names.back, options },
    },
    providers: [
      CredentialsProvider({
        name: 'Tailpiece',
        credentials: { name: {}, password: {} },
        async authorize(tried, request) {
          const address = callerAddress(new Headers(asText(request.headers)));
          const name = tried?.name ?? '';
          const password = tried?.password ?? '';
          const signedIn = await signIn({ name, password, address });
          if (signedIn.ok) return { id: String(signedIn.value) };
          if (signedIn.reason.code === 'too-many-tries') throw new Error('too-many-tries');
          return null;
        },
      }),
    ],
    callbacks: {
      jwt: ({ token }) => ({ sub: token.sub ?? '' }),
      session: ({ session, token }) => ({ expires: session.expires, memberId: Number(token.sub) }),
      redirect: ({ url, baseUrl }) => ownAddress(url, baseUrl),
    },
    logger: { error() {}, warn() {}, debug() {} },
  };
}

/** Only ways into the desk lead back from a sign-in; anything else ends at the desk itself. */
export function ownAddress(url: string, baseUrl: string): string {
  const desk = new URL('/desk', baseUrl);
  const asked = URL.parse(url, baseUrl);
  if (asked === null || asked.origin !== desk.origin) return desk.href;
  const isDesk = asked.pathname === '/desk' || asked.pathname.startsWith('/desk/');
  return isDesk && !/[\\\r\n]/.test(url) ? asked.origin + asked.pathname + asked.search : desk.href;
}

function asText(headers: Readonly<Record<string, unknown>> | undefined): Record<string, string> {
  return Object.fromEntries(
    Object.entries(headers ?? {}).flatMap(([name, value]) =>
      typeof value === 'string' ? [[name, value]] : [],
    ),
  );
}
