// All judged puzzles, and which of their cases are set aside: those whose text has a SHA-256 that
// begins with a byte divisible by 5. They are reported by the bench and not run by the tests.

import { createHash } from 'node:crypto';
import { DRAWING_LINES } from './drawing-lines.ts';
import { DRAWS } from './draws.ts';
import { EVIDENT_WINS } from './evident-wins.ts';
import { FEW_MEN_MATES } from './few-men-mates.ts';
import { FIRST_MOVE_MATES } from './first-move-mates.ts';
import { HEALEY_MATES } from './healey.ts';
import type { JudgedCase, JudgedPuzzle } from './judged-case.ts';
import { LONG_DEFENCES } from './long-defences.ts';
import { MATES_IN_MORE } from './mate-in-more.ts';
import { MATES_IN_TWO } from './mate-in-two.ts';
import { PROMOTION_MATES } from './promotion-mates.ts';
import { SHORT_MATES } from './short-mates.ts';
import { SMOTHERED_MATES } from './smothered-mates.ts';
import { SPECIAL_MOVES } from './special-moves.ts';
import { TABLE_ENDINGS } from './table-endings.ts';
import { TWO_READINGS } from './two-readings.ts';
import { WINS } from './wins.ts';

export const JUDGED_PUZZLES: readonly JudgedPuzzle[] = [
  ...MATES_IN_TWO,
  ...SHORT_MATES,
  ...SPECIAL_MOVES,
  ...HEALEY_MATES,
  ...MATES_IN_MORE,
  ...WINS,
  ...DRAWS,
  ...PROMOTION_MATES,
  ...FIRST_MOVE_MATES,
  ...FEW_MEN_MATES,
  ...SMOTHERED_MATES,
  ...LONG_DEFENCES,
  ...TWO_READINGS,
  ...EVIDENT_WINS,
  ...TABLE_ENDINGS,
  ...DRAWING_LINES,
];

/** True where the case belongs to the fifth that is not run until the end. */
export function isSetAside(judged: JudgedCase): boolean {
  return (createHash('sha256').update(judged.text, 'utf8').digest()[0] ?? 0) % 5 === 0;
}
