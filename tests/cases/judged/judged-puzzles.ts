// All judged puzzles, and which of their cases are set aside: those whose text has a SHA-256 that
// begins with a byte divisible by 5. They are reported by the bench and not run by the tests.

import { createHash } from 'node:crypto';
import { DRAWS } from './draws.ts';
import { HEALEY_MATES } from './healey.ts';
import type { JudgedCase, JudgedPuzzle } from './judged-case.ts';
import { MATES_IN_MORE } from './mate-in-more.ts';
import { MATES_IN_TWO } from './mate-in-two.ts';
import { SHORT_MATES } from './short-mates.ts';
import { SPECIAL_MOVES } from './special-moves.ts';
import { WINS } from './wins.ts';

export const JUDGED_PUZZLES: readonly JudgedPuzzle[] = [
  ...MATES_IN_TWO,
  ...SHORT_MATES,
  ...SPECIAL_MOVES,
  ...HEALEY_MATES,
  ...MATES_IN_MORE,
  ...WINS,
  ...DRAWS,
];

/** True where the case belongs to the fifth that is not run until the end. */
export function isSetAside(judged: JudgedCase): boolean {
  return (createHash('sha256').update(judged.text, 'utf8').digest()[0] ?? 0) % 5 === 0;
}
