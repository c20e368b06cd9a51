import { describe, expect, test } from 'vitest';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { findUci } from '#lib/rules/uci.ts';
import { spokenMove } from '#lib/words/spoken-moves.ts';

function spoken(fen: string, uci: string, locale: 'en' | 'de'): string {
  const position = parseFen(fen);
  if (!position.ok) throw new Error('bad test position');
  const move = findUci(position.value, uci);
  if (move === null) throw new Error('bad test move');
  return spokenMove(position.value, move, locale);
}

const rows: [string, string, string, string, string][] = [
  ['a quiet move', '4k3/8/8/8/8/8/8/R3K3 w - - 0 1', 'a1a5', 'rook to a5', 'Turm nach a5'],
  ['check', '4k3/8/8/8/8/8/8/R3K3 w - - 0 1', 'a1a8', 'rook to a8, check', 'Turm nach a8, Schach'],
  [
    'two rooks could go there: the square is said',
    '4k3/8/8/8/8/8/4K3/R6R w - - 0 1',
    'a1d1',
    'rook from a1 to d1',
    'Turm von a1 nach d1',
  ],
  [
    'the king stands between, so only one rook can',
    '4k3/8/8/8/8/8/8/R3K2R w - - 0 1',
    'a1d1',
    'rook to d1',
    'Turm nach d1',
  ],
  [
    'two knights',
    '4k3/8/8/8/8/8/8/1N2KN2 w - - 0 1',
    'b1d2',
    'knight from b1 to d2',
    'Springer von b1 nach d2',
  ],
  [
    'a pinned rival does not count',
    '4r1k1/8/8/8/8/4N3/8/1N2K3 w - - 0 1',
    'b1c3',
    'knight to c3',
    'Springer nach c3',
  ],
  [
    'smothered mate',
    '6rk/6pp/8/6N1/8/8/8/K7 w - - 0 1',
    'g5f7',
    'knight to f7, mate',
    'Springer nach f7, matt',
  ],
  [
    'a pawn takes and promotes',
    '3nk3/2P5/8/8/8/8/8/4K3 w - - 0 1',
    'c7d8q',
    'pawn takes d8, promoting to a queen, check',
    'Bauer schlägt d8, Umwandlung in Dame, Schach',
  ],
  [
    'another man than the queen',
    '7k/2P5/8/8/8/8/8/4K3 w - - 0 1',
    'c7c8n',
    'pawn to c8, promoting to a knight',
    'Bauer nach c8, Umwandlung in Springer',
  ],
  [
    'en passant',
    '4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 1',
    'e5d6',
    'pawn takes d6 en passant',
    'Bauer schlägt en passant auf d6',
  ],
  [
    'castling short',
    '5k2/8/8/8/8/8/8/4K2R w K - 0 1',
    'e1g1',
    'castles short, check',
    'kurze Rochade, Schach',
  ],
  ['castling long', '5k2/8/8/8/8/8/8/R3K3 w Q - 0 1', 'e1c1', 'castles long', 'lange Rochade'],
];

describe('[S3] moves as spoken words', () => {
  test.each(rows)('[S3] %s', (_why, fen, uci, en, de) => {
    expect(spoken(fen, uci, 'en')).toBe(en);
    expect(spoken(fen, uci, 'de')).toBe(de);
  });
});
