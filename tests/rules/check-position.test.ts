import { expect, test } from 'vitest';
import { checkPosition, type PositionReason } from '#lib/rules/check-position.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { parseSquare } from '#lib/rules/position.ts';
import { positionOf, refused, START_FEN } from '../support/positions.ts';

const at = (name: string): number => parseSquare(name) ?? -1;

const cases: [string, string, PositionReason][] = [
  ['no white king', '4k3/8/8/8/8/8/8/8 w - - 0 1', { code: 'kings', side: 'w', count: 0 }],
  ['two black kings', '4k2k/8/8/8/8/8/8/4K3 w - - 0 1', { code: 'kings', side: 'b', count: 2 }],
  [
    'seventeen men',
    '4k3/8/8/8/8/Q7/PPPPPPPP/RNBQKBNR w KQ - 0 1',
    { code: 'too-many-men', side: 'w', count: 17 },
  ],
  ['nine pawns', '4k3/pppppppp/p7/8/8/8/8/4K3 w - - 0 1', { code: 'too-many-pawns', side: 'b', count: 9 }],
  [
    'a pawn on the eighth rank',
    '4k2P/8/8/8/8/8/8/4K3 w - - 0 1',
    { code: 'pawn-on-last-rank', square: at('h8') },
  ],
  [
    'a pawn on its own first rank',
    '4k3/8/8/8/8/8/8/4K2P w - - 0 1',
    { code: 'pawn-on-last-rank', square: at('h1') },
  ],
  [
    'the side that has moved stands in check',
    '4k3/8/8/8/8/8/8/4RK2 w - - 0 1',
    { code: 'king-can-be-taken', side: 'b', checkers: [at('e1')] },
  ],
  [
    'kings side by side',
    '8/8/8/8/8/8/4k3/4K3 w - - 0 1',
    { code: 'king-can-be-taken', side: 'b', checkers: [at('e1')] },
  ],
  [
    'a right without its rook',
    'r3k2r/8/8/8/8/8/8/R3K3 w KQkq - 0 1',
    { code: 'castling-right', letter: 'K' },
  ],
  [
    'a right with a rook of the other side',
    '4k3/8/8/8/8/8/4P3/r1B1K3 w Q - 0 1',
    { code: 'castling-right', letter: 'Q' },
  ],
  [
    'a right without the king at home',
    '3k3r/8/8/8/8/8/8/4K3 w k - 0 1',
    { code: 'castling-right', letter: 'k' },
  ],
  [
    'en passant on a rank of its own side',
    '4k3/8/8/8/4P3/8/8/4K3 w - e3 0 1',
    { code: 'en-passant-square', square: at('e3') },
  ],
  [
    'en passant without a pawn in front',
    '4k3/8/8/8/8/8/8/4K3 b - e3 0 1',
    { code: 'en-passant-square', square: at('e3') },
  ],
  [
    'en passant over a man',
    '4k3/8/8/8/4P3/4N3/8/4K3 b - e3 0 1',
    { code: 'en-passant-square', square: at('e3') },
  ],
  [
    'en passant from a square that is not empty',
    '4k3/8/8/8/4P3/8/4R3/4K3 b - e3 0 1',
    { code: 'en-passant-square', square: at('e3') },
  ],
];
test.each(cases)('refused: %s', (_what, fen, reason) => {
  expect(refused(parseFen(fen))).toEqual({ code: 'position', position: reason });
});

test('a playable position is given back as it is', () => {
  const position = positionOf(START_FEN);
  expect(checkPosition(position)).toEqual({ ok: true, value: position });
});

test('problems need not arise in a game: three checkers and nine queens are taken', () => {
  expect(parseFen('4k3/8/8/8/QQQQQQQQ/8/8/4K2Q b - - 0 1').ok).toBe(true);
  expect(parseFen('4k3/8/3N4/8/8/8/7B/K3R3 b - - 0 1').ok).toBe(true);
});
