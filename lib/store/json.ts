// Our data as the client's JSON type, and back. What goes in was typed; what comes out was put in by us.

import type { Prisma } from './generated/client.ts';

// As JSON writes what the database's own JSON cannot hold: NUL and halves of surrogate pairs.
const NOT_KEPT = /\\u(?:0000|d[89a-f])/;

/**
 * Plain data as a JSON value: readonly is dropped, undefined fields fall away. NUL and halves of signs in texts
 * become U+FFFD: refused by the database, one of them would take all that is written with it down.
 */
export function toJson(value: unknown): Prisma.InputJsonValue {
  const written = JSON.stringify(value);
  return NOT_KEPT.test(written) ? JSON.parse(written, keepable) : JSON.parse(written);
}

function keepable(_key: string, value: unknown): unknown {
  return typeof value === 'string' ? value.toWellFormed().replaceAll('\0', '\ufffd') : value;
}
