import { describe, expect, test } from 'vitest';
import { createRandom } from '#lib/kit/random.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import type { Move } from '#lib/rules/move.ts';
import { parsePgn } from '#lib/rules/pgn.ts';
import { playMove } from '#lib/rules/play-move.ts';
import { writeSan } from '#lib/rules/san.ts';
import { writeUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { accepted, positionOf, refused, START_FEN } from '../support/positions.ts';

const movesOf = (text: string): string => accepted(parsePgn(text)).moves.map(writeUci).join(' ');

describe('the main line (PGN standard 1994, import format)', () => {
  test.each([
    ['bare moves', '1. e4 e5 2. Nf3 Nc6', 'e2e4 e7e5 g1f3 b8c6'],
    ['no spaces after the numbers', '1.e4 e5 2.Nf3 Nc6 *', 'e2e4 e7e5 g1f3 b8c6'],
    ['numbers of Black', '1. e4 1... e5 2. Nf3', 'e2e4 e7e5 g1f3'],
    ['comments of both kinds', '1. e4 {best; by (test} e5 ; 2. d4\n2. Nf3', 'e2e4 e7e5 g1f3'],
    ['nested variations', '1. e4 (1. d4 d5 (1... Nf6 {x)} ) 2. c4) 1... e5 ( 1... c5 )', 'e2e4 e7e5'],
    ['glyphs and suffixes', '1. e4! $1 e5?! $ 2. Nf3$13', 'e2e4 e7e5 g1f3'],
    ['an escaped line', '%1. d4\n1. e4', 'e2e4'],
    ['nothing after the result', '1. e4 e5 1-0 2. Nf3', 'e2e4 e7e5'],
    ['only the first game', '[Event "a"]\n\n1. e4 *\n\n[Event "b"]\n\n1. d4 *', 'e2e4'],
    ['the next game without a result before it', '[Event "a"]\n\n1. e4\n[Event "b"]\n\n1. d4', 'e2e4'],
    ['castling with figures, e.p. apart', '1. e4 a6 2. e5 d5 3. exd6 e.p.', 'e2e4 a7a6 e4e5 d7d5 e5d6'],
    ['a closing bracket too many', '1. e4 ) e5', 'e2e4 e7e5'],
  ])('%s', (_what, text, moves) => {
    expect(movesOf(text)).toBe(moves);
  });

  test('tags are kept, quotes in them unescaped, and FEN sets the start', () => {
    const fen = '4k3/8/8/8/8/8/8/4K2R w K - 0 1';
    const game = accepted(parsePgn(`[Event "The \\"Late\\" Show"]\n[FEN "${fen}"]\n[SetUp "1"]\n\n1. O-O *`));
    expect(game.tags.get('Event')).toBe('The "Late" Show');
    expect(writeFen(game.start)).toBe(fen);
    expect(game.positions.map(writeFen)).toEqual([fen, '4k3/8/8/8/8/8/8/5RK1 b - - 1 1']);
  });

  test('tags alone are a game without moves', () => {
    expect(movesOf('[Event "x"]\n*')).toBe('');
  });
});

describe('what is refused, with the place', () => {
  const depth = 100_000;
  test.each([
    ['nothing', ' \n ', { code: 'empty' }],
    ['too long', 'x'.repeat(200_001), { code: 'too-long', limit: 200_000 }],
    ['a comment without end', '1. e4\n{ no end', { code: 'not-closed', opened: '{', line: 2 }],
    ['a variation without end', '1. e4\n(1. d4\n(1. c4)', { code: 'not-closed', opened: '(', line: 2 }],
    ['brackets without end', '('.repeat(depth), { code: 'not-closed', opened: '(', line: 1 }],
    ['a broken tag', '[Event "x]\n1. e4', { code: 'tag', found: '[Event "x]', line: 1 }],
    [
      'an illegal move',
      '1. e4 e5\n2. Nf3 Nc6\n3. Bb6',
      { code: 'move', ply: 5, line: 3, san: { code: 'not-legal', text: 'Bb6' } },
    ],
    [
      'something else',
      '1. e4 then e5',
      { code: 'move', ply: 2, line: 1, san: { code: 'not-san', text: 'then' } },
    ],
    [
      'a start that cannot be',
      '[FEN "8/8/8/8/8/8/8/8 w - - 0 1"]\n*',
      { code: 'start', fen: { code: 'position', position: { code: 'kings', side: 'w', count: 0 } } },
    ],
  ])('%s', (_what, text, reason) => {
    expect(refused(parsePgn(text))).toEqual(reason);
  });
});

test('100 games of random play come back from their PGN (seed 31)', () => {
  const random = createRandom(31);
  for (let game = 0; game < 100; game += 1) {
    let position = positionOf(START_FEN);
    const played: Move[] = [];
    let text = '';
    while (played.length < 120) {
      const moves = legalMoves(position);
      if (moves.length === 0) break;
      const move = random.pick(moves);
      if (position.turn === 'w') text += `${position.fullmoveNumber}. `;
      text += `${writeSan(position, move)}${random.int(5) === 0 ? '\n' : ' '}`;
      played.push(move);
      position = playMove(position, move);
    }
    const parsed = accepted(parsePgn(`${text}*`));
    expect(parsed.moves).toEqual(played);
    expect(parsed.positions.at(-1)).toEqual(position);
  }
});
