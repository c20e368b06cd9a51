import { expect, test } from 'vitest';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { squareName } from '#lib/rules/position.ts';
import { findUci, playUci, writeUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { positionOf, START_FEN } from '../support/positions.ts';
import { readCaseLines } from '../support/read-cases.ts';

test('every legal move of the node count suite comes back from its UCI form', () => {
  let moves = 0;
  for (const line of readCaseLines('perft.epd')) {
    const position = positionOf(line.split(' ;')[0] ?? '');
    for (const move of legalMoves(position)) {
      expect(findUci(position, writeUci(move))).toEqual(move);
      moves += 1;
    }
  }
  expect(moves).toBeGreaterThan(5000);
});

test('of all pairs of squares and all men, those are moves that the list has', () => {
  const squares = Array.from({ length: 64 }, (_, square) => squareName(square));
  for (const line of readCaseLines('perft.epd').slice(0, 40)) {
    const position = positionOf(line.split(' ;')[0] ?? '');
    const listed = legalMoves(position).map(writeUci).sort();
    const found = squares.flatMap((from) =>
      squares.flatMap((to) =>
        ['', 'q', 'r', 'b', 'n', 'k']
          .map((man) => from + to + man)
          .filter((uci) => findUci(position, uci) !== null),
      ),
    );
    expect(found.sort()).toEqual(listed);
  }
});

test.each([
  ['no such move', 'e2e5'],
  ['not its turn', 'e7e5'],
  ['too short', 'e2'],
  ['too long', 'e2e4qq'],
  ['a promotion that is none', 'e2e4q'],
  ['capitals', 'E2E4'],
  ['notation', 'Nf3'],
  ['the null move', '0000'],
  ['nothing', ''],
])('no move: %s', (_what, text) => {
  expect(findUci(positionOf(START_FEN), text)).toBeNull();
  expect(playUci(positionOf(START_FEN), text)).toBeNull();
});

test('a promotion must name its man, and castling is the move of the king', () => {
  const promotion = positionOf('7k/P7/8/8/8/8/8/K7 w - - 0 1');
  expect(findUci(promotion, 'a7a8')).toBeNull();
  expect(findUci(promotion, 'a7a8q')?.promotion).toBe('q');
  const castling = positionOf('4k3/8/8/8/8/8/8/4K2R w K - 0 1');
  expect(findUci(castling, 'e1g1')?.castle).toBe('short');
  expect(findUci(castling, 'e1h1')).toBeNull();
});

test('playing gives the position after the move', () => {
  const after = playUci(positionOf(START_FEN), 'g1f3');
  expect(after === null ? null : writeFen(after)).toBe(
    'rnbqkbnr/pppppppp/8/8/8/5N2/PPPPPPPP/RNBQKB1R b KQkq - 1 1',
  );
});
