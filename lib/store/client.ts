// The connection to the database: one pool a process. Nothing waits for a lock or a statement for
// ever, and a lost race is run again.

import { PrismaPg } from '@prisma/adapter-pg';
import { config } from '#lib/machine/config.ts';
import { log } from '#lib/machine/log.ts';
import { type Prisma, PrismaClient } from './generated/client.ts';

/** A connection or a transaction: what every function of this room takes first. */
export type Tx = Prisma.TransactionClient;

const LIMITS = [
  'lock_timeout=5000',
  'statement_timeout=30000',
  'idle_in_transaction_session_timeout=90000',
  'timezone=UTC',
];

// Kept on the global object: a bundler may load this module more than once into a process.
declare global {
  var tailpieceDatabase: PrismaClient | undefined;
}

/** Where the database is. */
export function databaseAddress(): string {
  const url = config().databaseUrl;
  if (url === null) throw new Error('DATABASE_URL is not set: start the program with `npm start`.');
  return url;
}

/** The client of this process, connected at the first question. */
export function db(): PrismaClient {
  globalThis.tailpieceDatabase ??= new PrismaClient({
    // The longer forms quote the data of a failed statement, a viewer's text included.
    errorFormat: 'minimal',
    adapter: new PrismaPg(
      {
        connectionString: databaseAddress(),
        max: 10,
        connectionTimeoutMillis: 5000,
        options: LIMITS.map((limit) => `-c ${limit}`).join(' '),
      },
      { onPoolError: (error) => log().warn({ problem: error.message }, 'database connection lost') },
    ),
  });
  return globalThis.tailpieceDatabase;
}

/** Closes the pool; the next question opens a new one. */
export async function closeDatabase(): Promise<void> {
  const client = globalThis.tailpieceDatabase;
  globalThis.tailpieceDatabase = undefined;
  await client?.$disconnect();
}

const LOST_RACES = ['P2034', '40001', '40P01'];

/** Did the database give way to another transaction, so that trying again may succeed? */
function isLostRace(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  const code = 'code' in error ? String(error.code) : '';
  return LOST_RACES.includes(code) || LOST_RACES.some((one) => error.message.includes(`\`${one}\``));
}

/** Runs the work in one transaction, at most five times where it lost a race. */
export async function inTransaction<T>(work: (tx: Tx) => Promise<T>, timeoutMs = 15_000): Promise<T> {
  for (let tries = 1; ; tries += 1) {
    try {
      return await db().$transaction(work, { timeout: timeoutMs, maxWait: 5000 });
    } catch (error) {
      if (tries === 5 || !isLostRace(error)) throw error;
      log().info({ tries }, 'transaction lost a race and runs again');
    }
  }
}

/** The database's clock. */
export async function databaseNow(tx: Tx): Promise<Date> {
  const rows = await tx.$queryRaw<{ now: Date }[]>`select clock_timestamp() as now`;
  const first = rows[0];
  if (first === undefined) throw new Error('The database did not tell the time.');
  return first.now;
}
