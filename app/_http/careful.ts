import { log } from '#lib/machine/log.ts';
import { troublePage } from '../_ui/trouble-page.tsx';
import { htmlReply, jsonReply } from './replies.ts';
import { viewerOf, wantsJson } from './viewer.ts';

type Handler<C> = (request: Request, context: C) => Promise<Response>;

// Codes of the database client, of PostgreSQL and of the network that mean: not there at the moment.
const AWAY =
  /^(P1001|P1002|P1008|P1017|P2024|ECONN\w+|ETIMEDOUT|ENOTFOUND|EPIPE|57P0[1-3]|53[134]00|08\d{3})$/;
const RETRY_SECONDS = '5';

/** True where an error, or what caused it, says that the database is away. Bounded at eight causes. */
export function isDatabaseAway(error: unknown): boolean {
  let cause: unknown = error;
  for (let depth = 0; depth < 8 && typeof cause === 'object' && cause !== null; depth += 1) {
    const code: unknown = Reflect.get(cause, 'code') ?? Reflect.get(cause, 'errorCode');
    if (typeof code === 'string' && AWAY.test(code)) return true;
    const name: unknown = Reflect.get(cause, 'name');
    if (name === 'DriverAdapterError' && /reach|connect|closed/i.test(String(Reflect.get(cause, 'message'))))
      return true;
    cause = Reflect.get(cause, 'cause') ?? Reflect.get(cause, 'meta');
  }
  return false;
}

/** A handler at whose door failures of the machine end: 503 while the database is away, 500 for our own mistakes. */
export function careful<C>(handler: Handler<C>): Handler<C> {
  return async (request, context) => {
    try {
      return await handler(request, context);
    } catch (error) {
      return replyToFailure(request, error);
    }
  };
}

/** The reply to a failure. `keptText`: what the viewer had written, given back in a field to send again. */
export async function replyToFailure(
  request: Request,
  error: unknown,
  kept?: { readonly action: string; readonly fields: Readonly<Record<string, string>> },
): Promise<Response> {
  const isAway = isDatabaseAway(error);
  log().error({ err: error, isAway }, 'a public request failed');
  const status = isAway ? 503 : 500;
  const code = isAway ? 'database-away' : 'our-mistake';
  const reply = wantsJson(request)
    ? jsonReply({ error: code }, { status, keeping: 'nobody' })
    : htmlReply(
        await troublePage({ viewer: viewerOf(request, kept?.fields.lang), code, kept: kept ?? null }),
        {
          status,
          keeping: 'nobody',
        },
      );
  if (isAway) reply.headers.set('Retry-After', RETRY_SECONDS);
  return reply;
}
