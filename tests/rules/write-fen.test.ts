import { expect, test } from 'vitest';
import { createRandom } from '#lib/kit/random.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { playMove } from '#lib/rules/play-move.ts';
import { writeBoardFields, writeFen } from '#lib/rules/write-fen.ts';
import { accepted, afterMoves, positionOf, START_FEN } from '../support/positions.ts';
import { readCaseLines } from '../support/read-cases.ts';

test('every FEN of the node count suite comes back unchanged', () => {
  for (const line of readCaseLines('perft.epd')) {
    const fen = line.split(' ;')[0] ?? '';
    expect(writeFen(positionOf(fen))).toBe(fen);
  }
});

test('5,000 positions of random play are the same after writing and parsing (seed 11)', () => {
  const random = createRandom(11);
  for (let game = 0; game < 50; game += 1) {
    let position = positionOf(START_FEN);
    for (let ply = 0; ply < 100; ply += 1) {
      expect(accepted(parseFen(writeFen(position)))).toEqual(position);
      const moves = legalMoves(position);
      if (moves.length === 0) break;
      position = playMove(position, random.pick(moves));
    }
  }
});

test('after a double step the square passed over is written, capture or not (PGN standard 16.1.3.4)', () => {
  // The standard's own examples: 1.e4, then 1...c5, then 2.Nf3.
  expect(writeFen(afterMoves(START_FEN, ['e2e4']))).toBe(
    'rnbqkbnr/pppppppp/8/8/4P3/8/PPPP1PPP/RNBQKBNR b KQkq e3 0 1',
  );
  expect(writeFen(afterMoves(START_FEN, ['e2e4', 'c7c5']))).toBe(
    'rnbqkbnr/pp1ppppp/8/2p5/4P3/8/PPPP1PPP/RNBQKBNR w KQkq c6 0 2',
  );
  expect(writeFen(afterMoves(START_FEN, ['e2e4', 'c7c5', 'g1f3']))).toBe(
    'rnbqkbnr/pp1ppppp/8/2p5/4P3/5N2/PPPP1PPP/RNBQKB1R b KQkq - 1 2',
  );
});

test('the first three fields can be had alone', () => {
  expect(writeBoardFields(positionOf('4k3/8/8/8/8/8/8/4K2R w K - 3 9'))).toBe('4k3/8/8/8/8/8/8/4K2R w K');
});
