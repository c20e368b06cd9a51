// Where do evaluation and search keep their tables? All within SEARCH of layout.ts; the big table at
// HEAP_BASE is the transposition table, of which a search uses a fixed part (see hash.ts).

import { SEARCH } from './layout';

/** Middle-game and ending value of a man on a square, i16 each: 16 men x 64 squares x 2. */
export const SQUARE_VALUES: usize = SEARCH;
/** History of quiet moves, i32: 16 men x 64 squares. */
export const HISTORY: usize = SEARCH + 0x1000;
/** Two killers a ply, u32. */
export const KILLERS: usize = SEARCH + 0x2000;
/** The quiet answer that last refuted a man's move to a square, u32: 16 x 64. */
export const ANSWERS: usize = SEARCH + 0x3000;
/** Principal lines: a row of MAX_PLY moves a ply, u32. */
export const LINES: usize = SEARCH + 0x4000;
export const LINE_LENGTHS: usize = SEARCH + 0x10000;
/** Late move reductions: 64 depths x 64 move numbers, u8. */
export const REDUCTIONS: usize = SEARCH + 0x11000;
/** King and pawn against king: one bit a position, won or not, 32 KiB. */
export const KPK: usize = SEARCH + 0x12000;
/** Pawn structures once valued: 2,048 entries of 32 bytes. */
export const PAWN_CACHE: usize = SEARCH + 0x1a000;
/** Positions once valued: 16,384 entries of 8 bytes. */
export const EVAL_CACHE: usize = SEARCH + 0x2a000;
/** Man moved and square reached, a ply, u32, and the static value a ply, i32. */
export const PLY_MOVES: usize = SEARCH + 0x4a000;
export const PLY_VALUES: usize = SEARCH + 0x4a400;
/** Moves a root search leaves out, u32, at most 256. */
export const LEFT_OUT: usize = SEARCH + 0x4a800;
/** Squares in front of and beside a pawn of a side: 2 x 64 u64, passed and front. */
export const PASSED_MASK: usize = SEARCH + 0x4b000;
export const FILE_NEIGHBOURS: usize = SEARCH + 0x4b800;
export const STATE: usize = SEARCH + 0x4bc00;

export const MAX_PLY: i32 = 96;
export const MATE: i32 = 30000;
/** From here on a value is a mate, of either side. */
export const MATE_BOUND: i32 = 29000;
export const INFINITE: i32 = 31000;
