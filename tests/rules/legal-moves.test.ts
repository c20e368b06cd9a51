import { describe, expect, test } from 'vitest';
import { createRandom } from '#lib/kit/random.ts';
import { hasLegalMove, legalMoves } from '#lib/rules/legal-moves.ts';
import { playMove } from '#lib/rules/play-move.ts';
import { positionKey } from '#lib/rules/position-key.ts';
import { writeUci } from '#lib/rules/uci.ts';
import { otherBoard, otherLegalMoves } from '../support/other-rules.ts';
import { positionOf } from '../support/positions.ts';
import { readCaseLines } from '../support/read-cases.ts';

function movesFrom(fen: string, square: string): string[] {
  return legalMoves(positionOf(fen))
    .map(writeUci)
    .filter((uci) => uci.startsWith(square))
    .sort();
}

describe('hard cases', () => {
  const cases: [string, string, string, string[]][] = [
    [
      'a pinned rook moves on its line only',
      '4r2k/8/8/8/4R3/8/8/4K3 w - - 0 1',
      'e4',
      ['e4e2', 'e4e3', 'e4e5', 'e4e6', 'e4e7', 'e4e8'],
    ],
    ['a pinned knight does not move at all', '4r2k/8/8/8/4N3/8/8/4K3 w - - 0 1', 'e4', []],
    [
      'a pawn pinned on a file still goes forward',
      '4r2k/8/8/8/8/8/4P3/4K3 w - - 0 1',
      'e2',
      ['e2e3', 'e2e4'],
    ],
    ['a pawn pinned on a diagonal may take its pinner', '7k/8/8/8/7b/6P1/8/4K3 w - - 0 1', 'g3', ['g3h4']],
    [
      'the king does not step back along the line of check',
      'r3K2k/8/8/8/8/8/8/8 w - - 0 1',
      'e8',
      ['e8d7', 'e8e7', 'e8f7'],
    ],
    ['in double check only the king moves', '4r2k/8/8/8/7b/8/3N4/R3K3 w Q - 0 1', 'a1', []],
    [
      'a promotion has four forms',
      '7k/P7/8/8/8/8/8/K7 w - - 0 1',
      'a7',
      ['a7a8b', 'a7a8n', 'a7a8q', 'a7a8r'],
    ],
    [
      'a promotion may capture',
      '1n5k/P7/8/8/8/8/8/K7 w - - 0 1',
      'a7',
      ['a7a8b', 'a7a8n', 'a7a8q', 'a7a8r', 'a7b8b', 'a7b8n', 'a7b8q', 'a7b8r'],
    ],
    ['no double step through a man', '7k/8/8/8/8/4n3/4P3/K7 w - - 0 1', 'e2', []],
  ];
  test.each(cases)('%s (%s)', (_why, fen, square, expected) => {
    expect(movesFrom(fen, square)).toEqual(expected);
  });
});

describe('a second opinion', () => {
  test('200,000 distinct positions of random play: chess.js has the same legal moves (seed 20260101)', () => {
    const random = createRandom(20260101);
    const starts = readCaseLines('perft.epd').map((line) => line.split(' ;')[0] ?? '');
    const seen = new Set<string>();
    const wrong: string[] = [];
    for (let game = 0; seen.size < 200_000 && wrong.length === 0; game += 1) {
      // Every second game begins at the start position, the others at positions chosen for their traps.
      let position = positionOf(game % 2 === 0 ? (starts[0] ?? '') : random.pick(starts));
      for (let ply = 0; ply < 120; ply += 1) {
        const key = positionKey(position);
        const moves = legalMoves(position);
        if (!seen.has(key)) {
          seen.add(key);
          const fen = `${key} ${position.halfmoveClock} ${position.fullmoveNumber}`;
          const ours = moves.map(writeUci).sort().join(' ');
          if (otherLegalMoves(otherBoard(fen)).join(' ') !== ours) wrong.push(fen);
          if (hasLegalMove(position) !== moves.length > 0) wrong.push(`${fen}: any move?`);
        }
        if (moves.length === 0) break;
        position = playMove(position, random.pick(moves));
      }
    }
    expect(wrong).toEqual([]);
    expect(seen.size).toBeGreaterThanOrEqual(200_000);
  });
});
