// Where does everything lie in linear memory? The kernel owns its memory by hand: no allocator, no
// garbage. Everything below STATIC_BASE is ours; above it the compiler puts its constants, and above
// HEAP_BASE lies the one big table, whose size the caller chooses when the kernel starts.
//
// Squares: a1 = 0 ... h8 = 63. A man is one byte, 0 empty, 1 to 6 White's pawn, knight, bishop, rook,
// queen, king, 9 to 14 Black's. A side is 0 (White) or 8 (Black), so `side + kind` is a man.

// Position state. Slot `man` of BB is the bitboard of that man; slots 0 and 8 hold all men of a side.
export const BB: usize = 0x100;
export const BOARD: usize = 0x180;
/** Side to move, u32: 0 or 8. */
export const SIDE: usize = 0x1c0;
/** u32: castling rights in bits 0-3 (white short, white long, black short, black long), en passant square in bits 8-15 (64 = none), half-move clock in bits 16-31. */
export const META: usize = 0x1c4;
/** Zobrist key, u64. The en passant file is part of it only where such a capture is legal. */
export const KEY: usize = 0x1c8;
/** Top of the undo stack, u32 address. */
export const UNDO_TOP: usize = 0x1d0;

// Scratch of the generator (valid until the next call that fills it).
/** Six bitboards, by kind: squares from which a man of that kind would check the defender's king. */
export const CHECK_SQUARES: usize = 0x200;
/** Own men that uncover a check when they leave their line, u64. */
export const DISCOVERERS: usize = 0x238;

/** Where the caller writes a position: 64 bytes of men, then side (0/8), castling, en passant (64 = none), one byte each, u16 clock. */
export const INPUT: usize = 0x280;
/** Where answers wait for the caller: 16 KiB. */
export const OUTPUT: usize = 0x400;

// Tables filled once by `initTables`.
export const KNIGHT: usize = 0x4400;
export const KING: usize = 0x4600;
/** Squares attacked by a pawn: 64 entries for White, then 64 for Black. */
export const PAWN: usize = 0x4800;
/** Eight ray directions times 64 squares. */
export const RAYS: usize = 0x4c00;
/** Castling rights that survive a move from or to a square, 64 bytes. */
export const RIGHTS_MASK: usize = 0x5c00;
export const ROOK_EMPTY: usize = 0x5d00;
export const BISHOP_EMPTY: usize = 0x5f00;
/** Rook entry a square, 32 bytes: mask u64, magic u64, address u32, shift u32. Bishops follow. */
export const ROOK_MAGIC: usize = 0x6100;
export const BISHOP_MAGIC: usize = 0x6900;
/** Zobrist keys: 16 men times 64 squares. */
export const ZOBRIST: usize = 0x7100;
export const ZOBRIST_CASTLING: usize = 0x9100;
export const ZOBRIST_EP: usize = 0x9180;
export const ZOBRIST_CLOCK: usize = 0x91c0;
/** Squares strictly between two squares on one line; the whole line through two squares. 64 x 64 each. */
export const BETWEEN: usize = 0x9800;
export const LINE: usize = 0x11800;
export const ROOK_ATTACKS: usize = 0x19800;
export const BISHOP_ATTACKS: usize = 0xe1800;
/** Undo stack: 16 bytes a ply, 2,048 plies. */
export const UNDO: usize = 0xec000;
/** Move lists grow here, one after the other, 4 bytes a move. 512 KiB. */
export const MOVES: usize = 0xf4000;
/** Counters and scratch of the mate prover. 64 KiB. */
export const PROVER: usize = 0x174000;
/** Free for the evaluator and its search. 448 KiB. */
export const SEARCH: usize = 0x184000;
export const SEARCH_END: usize = 0x1f4000;
/** Free for table generation and anything to come, up to STATIC_BASE. */
export const SPARE: usize = 0x1f4000;
/** `--memoryBase` of the build: compiler constants begin here. */
export const STATIC_BASE: usize = 0x200000;
/** Table of the search, 16 MiB (the constants below it need far less than 128 KiB). */
export const HEAP_BASE: usize = 0x220000;
/** Table of the mate prover, to the end of the memory; `tableBytes()` long. */
export const PROVER_TABLE: usize = HEAP_BASE + (16 << 20);

export const WHITE: u32 = 0;
export const BLACK: u32 = 8;
export const PAWN_KIND: u32 = 1;
export const KNIGHT_KIND: u32 = 2;
export const BISHOP_KIND: u32 = 3;
export const ROOK_KIND: u32 = 4;
export const QUEEN_KIND: u32 = 5;
export const KING_KIND: u32 = 6;
export const NO_SQUARE: u32 = 64;

// A move is an u32: from | to << 6 | promotion kind << 12 | special << 15. 0 is no move.
export const EN_PASSANT: u32 = 1 << 15;
export const CASTLE: u32 = 2 << 15;
export const DOUBLE_PUSH: u32 = 3 << 15;
export const SPECIAL: u32 = 3 << 15;
/** Set by `markChecks`: the move gives check. Not part of the move; a sorting score may lie above, from bit 18 on. */
export const GIVES_CHECK: u32 = 1 << 17;
/** The bits that name a move. */
export const MOVE_MASK: u32 = 0x1ffff;
