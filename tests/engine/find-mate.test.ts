import { expect, test } from 'vitest';
import { createEngine } from '#lib/engine/create-engine.ts';
import { findMate } from '#lib/engine/find-mate.ts';
import { createTableSet } from '#lib/engine/table-set.ts';
import { createRandom } from '#lib/kit/random.ts';
import { checkPosition } from '#lib/rules/check-position.ts';
import { KINDS, manOf, type Position } from '#lib/rules/position.ts';
import { writeFen } from '#lib/rules/write-fen.ts';

const engine = createEngine({ hashMiB: 1 });

test('[V1] the shortest mate is found with its first move', () => {
  // Paul Morphy, New York Clipper 1856 (source from memory): mate in 2, key Ra6.
  const found = findMate(engine, { fen: 'kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1', bound: 5, proofNodes: 1e6 });
  expect(found).toMatchObject({ mateIn: 2, move: 'a1a6', isComplete: true });
});

test('[V1] no mate within the bound is said to be none; out of budget is said to be unfinished', () => {
  const fen = 'kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1';
  expect(findMate(engine, { fen, bound: 1, proofNodes: 1e6 })).toMatchObject({
    mateIn: null,
    isComplete: true,
  });
  const loyd = 'n1rb4/1p3p1p/1p6/1R5K/8/p3p1PN/1PP1R3/N6k w - - 0 1';
  expect(findMate(engine, { fen: loyd, bound: 5, proofNodes: 100 })).toMatchObject({
    isComplete: false,
    mateIn: null,
  });
});

const SEED = 4_711;
const MEN = ['KQk', 'KRk', 'KPk', 'KQkr'];

/** A random position of these men, White to move, or null where they stand illegally. */
function scatter(men: string, random: ReturnType<typeof createRandom>): Position | null {
  const board = new Uint8Array(64);
  for (const letter of men) {
    const square = random.int(64);
    const isPawnOnEdge = letter.toLowerCase() === 'p' && (square < 8 || square > 55);
    if (board[square] !== 0 || isPawnOnEdge) return null;
    const kind = KINDS.find((one) => one === letter.toLowerCase()) ?? 'k';
    board[square] = manOf(letter === letter.toUpperCase() ? 'w' : 'b', kind);
  }
  const position = {
    board,
    turn: 'w',
    castling: 0,
    enPassant: -1,
    halfmoveClock: 0,
    fullmoveNumber: 1,
  } as const;
  return checkPosition(position).ok ? position : null;
}

test(`[V1] [V4] prover and endgame tables, made from opposite ends, agree on mates up to 6 moves (seed ${SEED})`, () => {
  const random = createRandom(SEED);
  const tables = createTableSet();
  const large = createEngine({ hashMiB: 16 });
  const seen = new Map<number | null, number>();
  const wrong: string[] = [];
  for (let n = 0; n < 4_000; n += 1) {
    const position = scatter(random.pick(MEN), random);
    const known = position && tables.probe(position);
    if (!known) continue;
    const isShort = known.result === 'won' && known.distance !== null && known.distance <= 6;
    // Longer mates are many and all alike to the prover: a few of them will do.
    if (!isShort && random.int(20) > 0) continue;
    const fen = writeFen(position);
    const { mateIn } = findMate(large, { fen, bound: isShort ? 6 : 4, proofNodes: 20_000_000 });
    const expected = isShort ? known.distance : null;
    if (mateIn !== expected) wrong.push(`${fen}: ${mateIn}, table ${expected}`);
    seen.set(expected, (seen.get(expected) ?? 0) + 1);
  }
  expect(wrong).toEqual([]);
  for (const length of [1, 2, 3, 4, 5, 6, null]) expect(seen.get(length) ?? 0).toBeGreaterThan(10);
});
