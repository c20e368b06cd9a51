import { config } from '#lib/machine/config.ts';

// A first-party cookie by which the next answer of a device is known as the same person's (mechanics: solver).
const YEAR_SECONDS = 400 * 24 * 60 * 60;

/** The device's token: the one it brought, or a fresh one of 128 random bits with the cookie that sets it. */
export function deviceOf(request: Request): { readonly token: string; readonly setCookie: string | null } {
  const name = cookieName();
  const brought = (request.headers.get('cookie') ?? '')
    .split(';')
    .map((pair) => pair.trim())
    .find((pair) => pair.startsWith(`${name}=`))
    ?.slice(name.length + 1);
  if (brought !== undefined && /^[A-Za-z0-9_-]{22}$/.test(brought))
    return { token: brought, setCookie: null };
  const token = Buffer.from(crypto.getRandomValues(new Uint8Array(16))).toString('base64url');
  const secure = isSecure() ? '; Secure' : '';
  return {
    token,
    setCookie: `${name}=${token}; Path=/; Max-Age=${YEAR_SECONDS}; HttpOnly; SameSite=Lax${secure}`,
  };
}

function isSecure(): boolean {
  return config().publicUrl.startsWith('https:');
}

function cookieName(): string {
  return isSecure() ? '__Host-device' : 'device';
}
