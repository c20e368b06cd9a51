// Seeded chance: the same seed gives the same numbers on every machine, so that a random test can be
// run again and a drawn order can be recomputed. Not for secrets.

/** A stream of numbers that follows from its seed alone. */
export interface Random {
  /** The next number, at least 0 and below 1. */
  next(): number;
  /** A whole number, at least 0 and below `bound`. */
  int(bound: number): number;
  /** One entry of the list; throws on an empty list. */
  pick<T>(list: readonly T[]): T;
}

/**
 * Starts a stream from a seed (its lowest 32 bits count).
 *
 * Source: the "mulberry32" mixing step, a public-domain 32-bit generator with period 2^32.
 */
export function createRandom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const int = (bound: number): number => Math.floor(next() * bound);
  return {
    next,
    int,
    pick<T>(list: readonly T[]): T {
      if (list.length === 0) throw new Error('pick: the list is empty');
      // The index is below the length, so the entry is there even where T holds undefined.
      return list[int(list.length)] as T;
    },
  };
}
