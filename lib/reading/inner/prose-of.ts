// How likely is a token that could be a move a word of prose: a place, a room, a piece of paper?

import { isPlain } from './between.ts';
import type { AnyLexeme } from './phrase.ts';

/** How much a token can also be prose: 0 surely a move, 1 likely a move, 2 likely prose, 3 surely no move. */
export type Prose = 0 | 1 | 2 | 3;

/** Words that join the members of a list. */
export const LISTING = new Set('and und y e et и ve &'.split(' '));

const LOCATIVES = new Set(
  `on at in of from against square field the this that around near and's auf am im der das en de del sur du des la le el su sul da di no na em do
   около на поле пункт with's guards guard covers cover attacks attack controls defends weak behind into's via
   feld campo case casa casella kare protects between zwischen
   entre tra fra между`.split(/\s+/),
);
const NOUNS_BEHIND = new Set(
  `square squares paper pawn pawns file rank knight bishop rook queen king is's weak sheet size field complex point hole format
   bauer springer feld papier peon pion`.split(/\s+/),
);

/** "Flat b3", "chapter c5": what such a word numbers is no square of the board. */
const NUMBERED = new Set(
  `flat block room seat row gate platform chapter page level version model vitamin table section grade class bus
   highway motorway road floor door apartment apt suite studio hall box chord episode series season size channel
   wohnung haus zimmer gleis seite kapitel platz reihe kanal tur etage porte chambre chapitre canal capitulo pagina sala habitacion piso
   puerta calle capitolo camera stanza porta scala quarto andar глава комната квартира этаж oda kat kapi bolum`.split(
    /\s+/,
  ),
);
/** Words behind which a lone square is a move and no place: what comes next, or what the answer is. */
const SEQUENCE = new Set(
  `then next dann danach luego despues puis ensuite poi dopo entao depois затем потом sonra
   line answer solution key move antwort losung zug respuesta solucion reponse coup risposta soluzione mossa resposta solucao lance
   ответ решение ход cevap cozum hamle`.split(/\s+/),
);

/** "On h7 and h8": a second square of the same place. */
function isBesidePlace(lexemes: readonly AnyLexeme[], index: number): boolean {
  const [where, square, and] = [lexemes[index - 3], lexemes[index - 2], lexemes[index - 1]];
  if (and?.type !== 'word' || !LISTING.has(and.word) || square?.type !== 'move' || !square.isBareSquare)
    return false;
  return where?.type === 'word' && LOCATIVES.has(where.word);
}

const MODAL = new Set(
  `can could may might would to cannot can't couldn't never kann konnte darf puede podia peut pouvait puo poteva pode podia может`.split(
    ' ',
  ),
);

function castlesIn({ ways }: Extract<AnyLexeme, { type: 'move' }>): boolean {
  return ways[0]?.[0]?.shapes[0]?.castle != null;
}

/** How likely the token is a word of prose; written moves with a man's letter never are. */
export function proseOf(lexemes: readonly AnyLexeme[], index: number): Prose {
  const lexeme = lexemes[index];
  if (lexeme?.type === 'malformed') return lexeme.isMoveLike ? 1 : 2;
  if (lexeme === undefined || lexeme.type !== 'move') return 2;
  const before = lexemes[index - 1];
  if (lexeme.strength === 'strong') return 0;
  if (lexeme.strength === 'phrase')
    return lexeme.isVerbless && before?.type === 'word' && isPlain(before.word) ? 1 : 0;
  const after = lexemes[index + 1];
  const isTold = 'isMoverless' in lexeme && lexeme.isMoverless;
  if (isTold && before?.type !== 'word' && lexemes.slice(0, index).some(({ type }) => type === 'move'))
    return 3;
  const isNext = before?.type === 'word' && SEQUENCE.has(before.word);
  // "Before he can castle": what may be done is not done.
  if (lexeme.strength === 'vague' && castlesIn(lexeme) && before?.type === 'word' && MODAL.has(before.word))
    return 3;
  if (lexeme.strength === 'vague') return isNext && castlesIn(lexeme) ? 1 : 2;
  if (lexeme.strength === 'loose') return 1;
  if (lexeme.strength === 'hint') return 3;
  if (before?.type === 'word' && (LOCATIVES.has(before.word) || NUMBERED.has(before.word))) return 3;
  if (after?.type === 'word' && NOUNS_BEHIND.has(after.word)) return 3;
  if (lexeme.strength === 'files' && (before?.type === 'word' || after?.type === 'word')) return 3;

  if (isBesidePlace(lexemes, index)) return 3;
  const words = [before, after].filter((one) => one?.type === 'word');
  if (words.some(({ word }) => isPlain(word))) return isNext ? 1 : 2;
  return words.length > 0 ? 1 : 0;
}
