// Limits of how often something may be tried. Counted in the database, so that every process counts alike.

import { Pool } from 'pg';
import { RateLimiterPostgres, RateLimiterRes } from 'rate-limiter-flexible';
import { databaseAddress } from './client.ts';

/** A limit: so many turns in so many seconds, then a pause. */
export interface Limit {
  readonly name: string;
  readonly turns: number;
  readonly seconds: number;
  /** Pause once the turns are used up; without it, until the seconds are over. */
  readonly pauseSeconds?: number;
}

let kept: { readonly pool: Pool; readonly limiters: Map<string, RateLimiterPostgres> } | null = null;

function limiterFor(limit: Limit): RateLimiterPostgres {
  kept ??= {
    pool: new Pool({
      connectionString: databaseAddress(),
      max: 2,
      connectionTimeoutMillis: 5000,
      allowExitOnIdle: true,
    }),
    limiters: new Map(),
  };
  const { pool, limiters } = kept;
  const known = limiters.get(limit.name);
  if (known !== undefined) return known;
  const made = new RateLimiterPostgres({
    storeClient: pool,
    tableName: 'rate_limit',
    tableCreated: true,
    keyPrefix: limit.name,
    points: limit.turns,
    duration: limit.seconds,
    ...(limit.pauseSeconds === undefined ? {} : { blockDuration: limit.pauseSeconds }),
  });
  limiters.set(limit.name, made);
  return made;
}

/** Takes a turn; gives 0 where there was one left, else the seconds to wait. Keys are hashes, never addresses or names. */
export async function takeTurn(limit: Limit, key: string): Promise<number> {
  try {
    await limiterFor(limit).consume(key);
    return 0;
  } catch (refused) {
    if (refused instanceof RateLimiterRes) return Math.max(1, Math.ceil(refused.msBeforeNext / 1000));
    throw refused;
  }
}

/** Gives the turns of a key back, after a success. */
export async function forgetTurns(limit: Limit, key: string): Promise<void> {
  await limiterFor(limit).delete(key);
}

/** Closes the connections; the next turn opens new ones. */
export async function closeRateLimits(): Promise<void> {
  const open = kept;
  kept = null;
  await open?.pool.end();
}
