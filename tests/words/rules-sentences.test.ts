import { expect, test } from 'vitest';
import { checkPosition } from '#lib/rules/check-position.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { parsePgn } from '#lib/rules/pgn.ts';
import { parseSan } from '#lib/rules/san.ts';
import { LOCALES } from '#lib/words/locale.ts';
import { fenSentence, pgnSentence, positionSentence, sanSentence } from '#lib/words/rules-sentences.ts';
import { positionOf, refused, START_FEN } from '../support/positions.ts';

const men = 'rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR';

test.each([
  ['', 'A FEN has six parts (four will do), parted by spaces: this has 0.'],
  [`${men} x KQkq - 0 1`, 'FEN, side to move: expected "w" or "b", found "x".'],
  [
    `${men.replace('pppppppp', 'ppppppp')} w KQkq - 0 1`,
    'FEN, the men: rank 7 is not eight squares of p n b r q k, capitals for White, and numbers for gaps: found "ppppppp".',
  ],
  [
    '8/8/8/8/8/8/8 w - - 0 1',
    'FEN, the men: expected eight ranks parted by "/", each of eight squares: found "8/8/8/8/8/8/8".',
  ],
  ['8/8/8/8/8/8/8/K7 w - - 0 1', 'Black must have one king and has 0.'],
  ['8/8/8/8/8/8/4k3/4K3 w - - 0 1', 'Black is in check (from e1), but it is the other side to move.'],
  ['4k3/8/8/8/8/8/8/4K3 w K - 0 1', 'The castling right "K" needs king and rook on their first squares.'],
  ['4k2P/8/8/8/8/8/8/4K3 w - - 0 1', 'No pawn can stand on h8.'],
])('a FEN that is refused is told what was expected: %s', (fen, sentence) => {
  expect(fenSentence(refused(parseFen(fen)), 'en')).toBe(sentence);
});

test('a game that is refused is told the line, and why', () => {
  expect(pgnSentence(refused(parsePgn('1. e4\ne5 2. Nf6')), 'en')).toBe(
    'Line 2, half-move 3: Nf6 is not a legal move here.',
  );
  expect(pgnSentence(refused(parsePgn('[FEN "x"]')), 'en')).toMatch(
    /^The start position of the game \(tag FEN\) cannot be used. A FEN has/,
  );
  expect(pgnSentence(refused(parsePgn('{')), 'de')).toBe('Zeile 1: „{“ wird nie geschlossen.');
  expect(pgnSentence(refused(parsePgn('')), 'en')).toBe('There is no game in this text.');
  expect(pgnSentence(refused(parsePgn('[x')), 'en')).toBe(
    'Line 1: expected a tag such as [Event "Name"], found [x.',
  );
  expect(pgnSentence(refused(parsePgn('x'.repeat(200_001))), 'en')).toBe(
    'The game is too long: at most 200,000 characters.',
  );
});

test('a move that is refused is quoted', () => {
  const knights = positionOf('4k3/8/8/8/8/1N6/8/1N2K3 w - - 0 1');
  expect(sanSentence(refused(parseSan(knights, 'Nd2')), 'en')).toBe('Nd2 fits several moves: b1d2, b3d2.');
  expect(sanSentence(refused(parseSan(positionOf(START_FEN), '{x')), 'en')).toContain('"{x" is not a move');
});

test('the same in every language, for a position looked at alone', () => {
  const reason = refused(checkPosition({ ...positionOf(START_FEN), enPassant: 20 }));
  expect(LOCALES.map((locale) => positionSentence(reason, locale))).toEqual([
    'No pawn can just have passed e3: check the en passant square.',
    'Über e3 kann gerade kein Bauer gezogen sein: bitte das En-passant-Feld prüfen.',
  ]);
});
