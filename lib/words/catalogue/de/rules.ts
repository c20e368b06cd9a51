// Why a position, a game or a move was not taken, in German.

import type { rulesEn } from '../en/rules.ts';

export const rulesDe: Readonly<Record<keyof typeof rulesEn, string>> = {
  'field-count':
    'Eine FEN hat sechs Teile (vier genügen), durch Leerzeichen getrennt: hier sind es {found, number}.',
  'field-men':
    'FEN, die Figuren: erwartet werden acht Reihen, durch „/“ getrennt, jede mit acht Feldern: gefunden „{found}“.',
  'field-rank':
    'FEN, die Figuren: die {rank}. Reihe hat nicht acht Felder aus p n b r q k, groß für Weiß, und Zahlen für Lücken: gefunden „{found}“.',
  'field-turn': 'FEN, Seite am Zug: erwartet „w“ oder „b“, gefunden „{found}“.',
  'field-castling':
    'FEN, Rochaderechte: erwartet „-“ oder Buchstaben aus „KQkq“ in dieser Folge, gefunden „{found}“.',
  'field-en-passant': 'FEN, En-passant-Feld: erwartet „-“ oder ein Feld wie „e3“, gefunden „{found}“.',
  'field-halfmove-clock':
    'FEN, Halbzüge seit Schlag- oder Bauernzug: erwartet eine ganze Zahl von 0 bis 9999, gefunden „{found}“.',
  'field-fullmove-number': 'FEN, Zugnummer: erwartet eine ganze Zahl von 1 bis 99999, gefunden „{found}“.',
  kings: '{side, select, w {Weiß} other {Schwarz}} muss einen König haben und hat {count, number}.',
  'too-many-men': '{side, select, w {Weiß} other {Schwarz}} darf 16 Figuren haben und hat {count, number}.',
  'too-many-pawns': '{side, select, w {Weiß} other {Schwarz}} darf 8 Bauern haben und hat {count, number}.',
  'pawn-on-last-rank': 'Auf {square} kann kein Bauer stehen.',
  'king-can-be-taken':
    '{side, select, w {Weiß} other {Schwarz}} steht im Schach (von {squares}), aber die andere Seite ist am Zug.',
  'castling-right': 'Das Rochaderecht „{letter}“ verlangt König und Turm auf ihren Ausgangsfeldern.',
  'en-passant-square': 'Über {square} kann gerade kein Bauer gezogen sein: bitte das En-passant-Feld prüfen.',
  'not-san': '„{text}“ ist kein Zug in englischer Kurznotation (wie Nf3, exd5, O-O, e8=Q).',
  'not-legal': '{text} ist hier kein regelgerechter Zug.',
  ambiguous: '{text} passt auf mehrere Züge: {candidates}.',
  'game-too-long': 'Die Partie ist zu lang: höchstens {limit, number} Zeichen.',
  'game-empty': 'In diesem Text steht keine Partie.',
  'game-not-closed': 'Zeile {line, number}: „{opened}“ wird nie geschlossen.',
  'game-tag': 'Zeile {line, number}: erwartet ein Kopfeintrag wie [Event "Name"], gefunden {found}.',
  'game-start': 'Die Ausgangsstellung der Partie (Eintrag FEN) ist nicht brauchbar. {why}',
  'game-move': 'Zeile {line, number}, Halbzug {ply, number}: {why}',
};
