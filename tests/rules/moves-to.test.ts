import { expect, test } from 'vitest';
import { createRandom } from '#lib/kit/random.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { ANY_KIND, KIND_BIT, movesTo } from '#lib/rules/moves-to.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Position } from '#lib/rules/position.ts';
import { writeUci } from '#lib/rules/uci.ts';
import { positionOf, START_FEN } from '../support/positions.ts';

function expectSameMoves(position: Position, kinds: number): void {
  const all = legalMoves(position).filter(
    ({ kind, castle }) => castle === null && (KIND_BIT[kind] & kinds) !== 0,
  );
  for (let square = 0; square < 64; square += 1) {
    const due = all.filter(({ to }) => to === square).map((move) => JSON.stringify(move));
    const found = movesTo(position, square, kinds).map((move) => JSON.stringify(move));
    expect(found.sort()).toEqual(due.sort());
  }
}

test('[V6] moves to a square are the legal moves that end there: 12 random games of seed 11', () => {
  const random = createRandom(11);
  for (let game = 0; game < 12; game += 1) {
    let position = positionOf(START_FEN);
    for (let ply = 0; ply < 60; ply += 1) {
      expectSameMoves(position, ANY_KIND);
      const moves = legalMoves(position);
      if (moves.length === 0) break;
      position = playMove(position, random.pick(moves));
    }
  }
});

test('[V6] only men of the kinds asked for move', () => {
  const position = positionOf('4k3/8/8/8/8/2n5/1P1B4/4K3 w - - 0 1');
  expect(movesTo(position, 18, KIND_BIT.b).map(writeUci)).toEqual(['d2c3']);
  expect(movesTo(position, 18, KIND_BIT.p).map(writeUci)).toEqual(['b2c3']);
  expect(movesTo(position, 18, ANY_KIND)).toHaveLength(2);
});

test('[V6] promotions come in four, captures in passing are found, pins and checks are kept', () => {
  for (const fen of [
    '3r3k/4P1pp/8/8/8/8/6PP/6K1 w - - 0 1',
    '4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 1',
    '8/8/8/K2pP2r/8/8/8/4k3 w - d6 0 1',
    '4r2k/8/8/8/7b/8/3N1P2/R3K3 w Q - 0 1',
  ]) {
    expectSameMoves(positionOf(fen), ANY_KIND);
  }
});
