// Short published mates by which proofs are made in tests: the composer and source stand with each.

import type { Proof } from '#lib/checker/proof.ts';
import { positionOf } from './positions.ts';
import { smallProof } from './small-prover.ts';

/** Key names, each a position with its length. */
export const MATES = {
  /** Common practice, no source: queen and king against king. */
  queenMate: { fen: '7k/8/5KQ1/8/8/8/8/8 w - - 0 1', moves: 1 },
  /** Paul Morphy, New York Clipper 1856 (source from memory): mate in 2, key Ra6. */
  morphy: { fen: 'kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1', moves: 2 },
  /** Samuel Loyd, Organ Pipes, 1859 (source from memory): mate in 2, key Qa5. */
  loyd: { fen: '2brrb2/8/p7/7Q/1p1kpPp1/1P1pN1K1/3P4/8 w - - 0 1', moves: 2 },
  /** Friedrich Amelung, Duena-Zeitung: mate in 2, key hxg6 en passant. */
  amelung: { fen: '7R/7p/5P1k/4PKpP/8/8/8/8 w - g6 0 1', moves: 2 },
  /** Hilmar Ebert, STERN 33/91, 8.08.1991: mate in 3, key O-O-O. */
  ebert: { fen: '8/2Pp4/8/N1P5/4p3/P1k5/8/R3K3 w Q - 0 1', moves: 3 },
  /** B. Schwarz, HORTEN Gr. Schach-Computer-Turnier XI/1979: mate in 3, key Rh3+. */
  schwarz: { fen: '8/8/8/8/R7/2k5/8/4K2R w K - 0 1', moves: 3 },
} as const;

/** The proof of one of them, made by the small prover. */
export function proofOf(name: keyof typeof MATES): Proof {
  const { fen, moves } = MATES[name];
  const proof = smallProof(positionOf(fen), fen, moves);
  if (proof === null) throw new Error(`${name}: no mate in ${moves}`);
  return proof;
}
