// Our data as the client's JSON type, and back. What goes in was typed; what comes out was put in by us.

import type { Prisma } from './generated/client.ts';

/** Plain data as a JSON value: readonly is dropped, undefined fields fall away. */
export function toJson(value: unknown): Prisma.InputJsonValue {
  return JSON.parse(JSON.stringify(value));
}
