// Moves as spoken words in German.

import type { movesEn } from '../en/moves.ts';

export const movesDe: Readonly<Record<keyof typeof movesEn, string>> = {
  king: 'König',
  queen: 'Dame',
  rook: 'Turm',
  bishop: 'Läufer',
  knight: 'Springer',
  pawn: 'Bauer',
  'from-square': '{man} von {square}',
  'goes-to': '{man} nach {square}',
  takes: '{man} schlägt {square}',
  'takes-en-passant': '{man} schlägt en passant auf {square}',
  'castles-short': 'kurze Rochade',
  'castles-long': 'lange Rochade',
  promotes: '{move}, Umwandlung in {man, select, queen {Dame} rook {Turm} bishop {Läufer} other {Springer}}',
  'with-check': '{move}, Schach',
  'with-mate': '{move}, matt',
};
