// Positions that lie beside published mates: a few plies of random play from them, so that short and
// longer mates, near misses and plain positions all occur.

import { createRandom } from '#lib/kit/random.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Position } from '#lib/rules/position.ts';
import { positionKey } from '#lib/rules/position-key.ts';
import type { MateCase } from './mate-cases.ts';
import { positionOf } from './positions.ts';

/** Endless distinct positions within `plies` plies of the cases, each with its seed's order. */
export function* walksFrom(cases: readonly MateCase[], seed: number, plies: number): Generator<Position> {
  const random = createRandom(seed);
  const seen = new Set<string>();
  for (;;) {
    let position = positionOf(random.pick(cases).fen);
    for (let left = random.int(plies + 1); left > 0; left -= 1) {
      const moves = legalMoves(position);
      if (moves.length === 0) break;
      position = playMove(position, random.pick(moves));
    }
    const key = positionKey(position);
    if (seen.has(key) || legalMoves(position).length === 0) continue;
    seen.add(key);
    yield position;
  }
}
