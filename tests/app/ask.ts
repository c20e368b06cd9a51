// Asks a route handler as a browser or a program would, without a server between.

import { config } from '#lib/machine/config.ts';

type Params = Readonly<Record<string, string>>;
type Handler<P extends Params> = (request: Request, context: { params: Promise<P> }) => Promise<Response>;

/** What is asked beside the address. */
export interface Asked {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
}

/** Asks a handler for a path of this site. */
export function ask<P extends Params>(
  handler: Handler<P>,
  path: string,
  params: P,
  { method = 'GET', headers = {}, body }: Asked = {},
): Promise<Response> {
  const request = new Request(`${config().publicUrl}${path}`, {
    method,
    headers: { 'accept-language': 'en', ...headers },
    ...(body === undefined ? {} : { body }),
  });
  return handler(request, { params: Promise.resolve(params) });
}

/** A form as a browser sends it from a page of ours. */
export function form(fields: Readonly<Record<string, string>>, origin = config().publicUrl): Asked {
  return {
    method: 'POST',
    headers: { 'content-type': 'application/x-www-form-urlencoded', origin },
    body: new URLSearchParams(fields).toString(),
  };
}

/** JSON as a program sends it. */
export function json(value: unknown): Asked {
  return {
    method: 'POST',
    headers: { 'content-type': 'application/json', accept: 'application/json' },
    body: JSON.stringify(value),
  };
}
