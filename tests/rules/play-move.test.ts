import { expect, test } from 'vitest';
import { createRandom } from '#lib/kit/random.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { playMove } from '#lib/rules/play-move.ts';
import { positionKey } from '#lib/rules/position-key.ts';
import { findUci, writeUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { otherBoard } from '../support/other-rules.ts';
import { positionOf } from '../support/positions.ts';
import { readCaseLines } from '../support/read-cases.ts';

test.each([
  [
    'a quiet move counts on the clock',
    '4k3/8/8/8/8/8/8/4K2R w K - 7 9',
    'h1h2',
    '4k3/8/8/8/8/8/7R/4K3 b - - 8 9',
  ],
  [
    'Black to move counts the move',
    '4k3/8/8/8/8/8/8/4K2R b K - 7 9',
    'e8e7',
    '8/4k3/8/8/8/8/8/4K2R w K - 8 10',
  ],
  [
    'a capture sets the clock back',
    '4k2r/8/8/8/8/8/8/4K2R w Kk - 7 9',
    'h1h8',
    '4k2R/8/8/8/8/8/8/4K3 b - - 0 9',
  ],
  ['short castling', 'r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 0 1', 'e1g1', 'r3k2r/8/8/8/8/8/8/R4RK1 b kq - 1 1'],
  ['long castling', 'r3k2r/8/8/8/8/8/8/R3K2R b KQkq - 0 1', 'e8c8', '2kr3r/8/8/8/8/8/8/R3K2R w KQ - 1 2'],
  [
    'a king step of two files that is no castling is not there',
    '4k3/8/8/8/8/8/8/4K2R w - - 0 1',
    'e1f1',
    '4k3/8/8/8/8/8/8/5K1R b - - 1 1',
  ],
  [
    'en passant takes the pawn behind',
    '4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 2',
    'e5d6',
    '4k3/8/3P4/8/8/8/8/4K3 b - - 0 2',
  ],
  ['promotion', '7k/P7/8/8/8/8/8/K7 w - - 5 1', 'a7a8n', 'N6k/8/8/8/8/8/8/K7 b - - 0 1'],
  [
    'promotion by capture takes the right away',
    'r3k3/1P6/8/8/8/8/8/K7 w q - 0 1',
    'b7a8q',
    'Q3k3/8/8/8/8/8/8/K7 b - - 0 1',
  ],
  ['a double step', '4k3/8/8/8/8/8/4P3/4K3 w - - 5 1', 'e2e4', '4k3/8/8/8/4P3/8/8/4K3 b - e3 0 1'],
])('%s', (_what, fen, uci, expected) => {
  const position = positionOf(fen);
  const move = findUci(position, uci);
  expect(move).not.toBeNull();
  if (move !== null) expect(writeFen(playMove(position, move))).toBe(expected);
  expect(writeFen(position)).toBe(fen);
});

test('20,000 moves of random play: chess.js comes to the same positions and clocks (seed 5)', () => {
  const random = createRandom(5);
  const starts = readCaseLines('perft.epd').map((line) => line.split(' ;')[0] ?? '');
  for (let played = 0; played < 20_000; ) {
    let position = positionOf(random.pick(starts));
    const board = otherBoard(writeFen(position));
    for (let ply = 0; ply < 60; ply += 1) {
      const moves = legalMoves(position);
      if (moves.length === 0) break;
      const move = random.pick(moves);
      position = playMove(position, move);
      board.move(writeUci(move));
      played += 1;
      expect(`${positionKey(position)} ${position.halfmoveClock} ${position.fullmoveNumber}`).toBe(
        board.fen(),
      );
    }
  }
});
