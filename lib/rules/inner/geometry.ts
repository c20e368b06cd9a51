// Which squares lie where: rays, steps and directions of the empty board, computed once as constant data.

import type { Square } from '../position.ts';

/** Steps of the eight directions; 0 to 3 are rook directions, 4 to 7 bishop directions. */
const DIRECTIONS: readonly (readonly [number, number])[] = [
  [0, 1],
  [0, -1],
  [1, 0],
  [-1, 0],
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
];

const KNIGHT_JUMPS: readonly (readonly [number, number])[] = [
  [1, 2],
  [2, 1],
  [2, -1],
  [1, -2],
  [-1, -2],
  [-2, -1],
  [-2, 1],
  [-1, 2],
];

const SQUARES: readonly Square[] = Array.from({ length: 64 }, (_, square) => square);

function step(square: Square, file: number, rank: number): Square | null {
  const toFile = (square & 7) + file;
  const toRank = (square >> 3) + rank;
  return toFile >= 0 && toFile < 8 && toRank >= 0 && toRank < 8 ? toRank * 8 + toFile : null;
}

function steps(square: Square, jumps: readonly (readonly [number, number])[]): readonly Square[] {
  return jumps.map(([file, rank]) => step(square, file, rank)).filter((to) => to !== null);
}

function walk(square: Square, direction: readonly [number, number]): readonly Square[] {
  const squares: Square[] = [];
  let at = step(square, direction[0], direction[1]);
  while (at !== null) {
    squares.push(at);
    at = step(at, direction[0], direction[1]);
  }
  return squares;
}

/** `RAYS[square * 8 + direction]`: the squares from there to the edge, nearest first. */
export const RAYS: readonly (readonly Square[])[] = SQUARES.flatMap((square) =>
  DIRECTIONS.map((direction) => walk(square, direction)),
);

/** `KNIGHT_STEPS[square]`: where a knight on the square may jump. */
export const KNIGHT_STEPS: readonly (readonly Square[])[] = SQUARES.map((s) => steps(s, KNIGHT_JUMPS));

/** `KING_STEPS[square]`: the squares beside the square. */
export const KING_STEPS: readonly (readonly Square[])[] = SQUARES.map((s) => steps(s, DIRECTIONS));

/** `PAWN_TARGETS[square]` for White, `[64 + square]` for Black: what a pawn there attacks. */
export const PAWN_TARGETS: readonly (readonly Square[])[] = [1, -1].flatMap((rank) =>
  SQUARES.map((square) =>
    steps(square, [
      [-1, rank],
      [1, rank],
    ]),
  ),
);

/** `DIRECTION[from * 64 + to]`: the direction in which `to` lies on a line from `from`, or -1. */
export const DIRECTION: Int8Array = buildDirections();

/** `DISTANCE[from * 64 + to]`: king's steps between two squares. */
export const DISTANCE: Uint8Array = Uint8Array.from({ length: 4096 }, (_, index) => {
  const from = index >> 6;
  const to = index & 63;
  return Math.max(Math.abs((from & 7) - (to & 7)), Math.abs((from >> 3) - (to >> 3)));
});

/** An entry of one of the tables above; an index outside is our own mistake. */
export function squaresAt(table: readonly (readonly Square[])[], index: number): readonly Square[] {
  const squares = table[index];
  if (squares === undefined) throw new Error(`No such table entry: ${index}`);
  return squares;
}

function buildDirections(): Int8Array {
  const table = new Int8Array(4096).fill(-1);
  for (const from of SQUARES) {
    for (let direction = 0; direction < 8; direction += 1) {
      for (const to of RAYS[from * 8 + direction] ?? []) table[from * 64 + to] = direction;
    }
  }
  return table;
}
