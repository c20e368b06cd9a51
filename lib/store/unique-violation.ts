// Turns a refused row into a fact that the caller can act on, by the constraint's name.

import { Prisma } from './generated/client.ts';

/** Names the index or the columns of a violated uniqueness; null for any other error. */
export function violatedUniqueness(error: unknown): string | null {
  if (!(error instanceof Prisma.PrismaClientKnownRequestError) || error.code !== 'P2002') return null;
  return JSON.stringify(error.meta ?? {});
}
