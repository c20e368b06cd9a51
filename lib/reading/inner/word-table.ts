// What a word means in a sentence about moves. One row a meaning; a new language is a few more words in the
// rows. English, German, Spanish, French, Portuguese, Italian, Russian, Turkish, and the further languages of
// further-words.ts; accents are folded away.

import { KIND_BIT } from '#lib/rules/moves-to.ts';
import { foldWord } from './fold-text.ts';
import { FURTHER_PIECES, FURTHER_ROLES } from './further-words.ts';
import type { WordRole } from './word-role.ts';

/** A word's part, with the kinds of men for a piece and a number for ranks. */
export interface WordSense {
  readonly role: WordRole;
  readonly kinds: number;
  readonly rank: number;
}

const PIECE_WORDS: readonly (readonly [kinds: number, words: string])[] = [
  [
    KIND_BIT.k,
    'king kings koenig könig könige rey roi rei re король короля королём королем королю şah sah kral konig shah şahı',
  ],
  [
    KIND_BIT.q,
    'queen queens königin dame damen dama reina reine rainha donna regina ферзь ферзя ферзём ферзем ферзю королева королевой vezir vezirle veziri lady',
  ],
  [
    KIND_BIT.r,
    'rook rooks turm türme tuerme torre torres tour tours ладья ладьей ладьёй ладью ладьи kale kaleyle kaleyi tower',
  ],
  [
    KIND_BIT.b,
    'bishop bishops bish läufer laeufer laufer alfil alfiles fou fous bispo alfiere alfieri слон слона слоном слону fil fili filler fille',
  ],
  [
    KIND_BIT.n,
    'knight knights springer pferd ross rössl caballo caballos cavalier cavaliers cavalo cavallo cavalli конь коня конем конём коню at atla atı horse horsey horsie knite',
  ],
  [
    KIND_BIT.p,
    'pawn pawns bauer bauern peon peón peones pion pions peao peão pedone pedoni пешка пешкой пешку пешки piyon piyonla piyonu',
  ],
];

const ROLE_WORDS: readonly (readonly [role: WordRole, words: string])[] = [
  [
    'take',
    `takes x take taking took captures capture capturing captured recaptures recapture eats eat grabs grab snaps
     schlägt schlaegt schlagt schlage schlagen nimmt nehme nehmen come comer toma tomo tomar captura capturo capturar por
     prend prends prendre reprend reprends reprendre capturer mange prende prendo prendere riprende riprendo
     cattura ricattura mangia per leva retoma recaptura
     бьет бьёт берет берёт бить взять взял съел съедает ест забирает взятие
     alir alır alir. al yer aliyor alıyor alarak`,
  ],
  [
    'go',
    `goes go going moves move moved plays play played playing steps step slides slide jumps jump hops hop swings lands retreats
     returns advances push pushes back down up over across zieht ziehe geht gehe spielt spiele kommt springt
     va juega juego mueve salta joue jouer bouge saute joga jogo move gioca gioco muove
     идет идёт ходит иду пошел пошёл отходит прыгает oynar oyna gider git gelir gel`,
  ],
  [
    'give',
    `sac sacs sacrifice sacrifices sacrificing sacrificed sack opfer opfert opfern sacrificio sacrifica sacrifie sacrificar
     sacrifício sacrifico жертва жертвует жертвую feda offer offers opfere`,
  ],
  [
    'promote',
    `promotes promote promoting promotion promoted promotes. underpromote underpromotes underpromotion underpromoting
     becomes become becoming equals makes make making into umwandlung umwandeln verwandelt wird zur zum zu werden
     unterverwandlung unterverwandelt unterverwandeln subpromotion subpromociona subpromocion sottopromozione subpromove
     corona corono coronar coronando promociona promociono convierte pidiendo virando vira promu hace fait fais faz fa holt holen promueve promoção promove promovendo promotion promeut promeus devient promuove promuovo promozione diventa
     превращается превращение превращением превращая становится terfi`,
  ],
  [
    'castle',
    'castles castle castling castled rochade rochiert rochieren rochiere enroque enroca enroco enrocar roque roquer arrocco arrocca rok рокировка рокировку рокируется рокируюсь',
  ],
  [
    'short',
    'short kingside king-side königsflügel königsseite kurz kurze kurzer klein kleine corto corta petit petite court courte chico chica pequeno pequena menor curto curta короткая короткую короткой малая малую малой kisa kısa kucuk küçük',
  ],
  [
    'long',
    'long queenside queen-side damenflügel damenseite lang lange langer longo longa longue gross groß grosse große largo larga grand grande maior mayor lungo lunga длинная длинную длинной большая большую большой uzun buyuk büyük',
  ],
  ['passant', 'passant e.p. e.p ep passant. en-passant проходе geçerken'],
  [
    'check',
    `check checks checking ch ch. chk mate mates mating checkmate checkmates checkmating checkmated # matt schach schachmatt setzt
     jaque mat echec échec xeque xeque-mate xequemate scacco matto scaccomatto matto. шах мат матом шахом smothered double
     dbl dis disc discovered discovering doppelschach ersticktes`,
  ],
  ['to', 'to nach a à al ao hacia para vers на к в ko'],
  ['on', 'on at auf in im en em sur su sul na no nel over'],
  ['from', 'from von vom de desde du da di del с со из'],
  [
    'article',
    'the a an my his her its their our der die das den dem el la los las le les l o os il lo gli un una une ein eine einen',
  ],
  [
    'filler',
    `now just has must can will have should is be by with simply must. also again here muss kann debe puede doit peut deve può
     pode должен может sous sotto lado côté lato flanco
     seite`,
  ],
  ['pronoun', 'it him her back ihn es zurück zurueck lo la le lui его её onu recaptures'],
];

const RANK_WORDS: readonly (readonly [rank: number, words: string])[] = [
  [1, 'one first eins erste ersten uno primera un première premiere primeira prima один'],
  [2, 'two second zwei zweite zweiten dos segunda deux due seconda два iki'],
  [3, 'three third drei dritte dritten tres trois tre три üç'],
  [4, 'four fourth vier vierte vierten cuatro quatre quattro quatro четыре dört'],
  [5, 'five fifth fünf fuenf fünfte fünften cinco cinq cinque пять beş'],
  [6, 'six sixth sechs sechste sechsten seis sei шесть altı'],
  [7, 'seven seventh sieben siebte siebten siebente siete sept sette sete семь yedi'],
  [8, 'eight eighth acht achte achten ocho huit otto oito восемь sekiz'],
];

/** Names of the files as they are dictated. */
export const FILE_WORDS: ReadonlyMap<string, number> = new Map([
  ['ay', 0],
  ['bee', 1],
  ['cee', 2],
  ['see', 2],
  ['dee', 3],
  ['ee', 4],
  ['eff', 5],
  ['gee', 6],
  ['aitch', 7],
  ['efe', 5],
  ['hache', 7],
  ['эф', 5],
  ['аш', 7],
]);

/** Words before the man that moves: "take it with the rook". */
export const WITH_WORDS: ReadonlySet<string> = new Set(
  'with using by mit avec con com met med z с'.split(' '),
);

/** Words that mean "rank" after an ordinal number. */
export const RANK_NOUNS: ReadonlySet<string> = new Set(
  'rank row reihe fila rangée rangee traversa fileira горизонталь горизонтали'.split(' ').map(foldWord),
);

/** Words that mean "file" after a letter: "the f-file", "h-Linie". */
export const FILE_NOUNS: ReadonlySet<string> = new Set(
  'file files linie columna colonne colonna coluna'.split(' '),
);

function buildWords(): Map<string, WordSense[]> {
  const table = new Map<string, WordSense[]>();
  const add = (word: string, sense: WordSense): void => {
    const key = foldWord(word);
    if (key !== '') table.set(key, [...(table.get(key) ?? []), sense]);
  };
  for (const [kinds, words] of [...PIECE_WORDS, ...FURTHER_PIECES]) {
    for (const word of words.split(/\s+/)) add(word, { role: 'piece', kinds, rank: -1 });
  }
  for (const [role, words] of [...ROLE_WORDS, ...FURTHER_ROLES]) {
    for (const word of words.split(/\s+/)) add(word, { role, kinds: 0, rank: -1 });
  }
  for (const [rank, words] of RANK_WORDS) {
    for (const word of words.split(/\s+/)) add(word, { role: 'rank', kinds: 0, rank: rank - 1 });
  }
  return table;
}

const WORDS: ReadonlyMap<string, readonly WordSense[]> = buildWords();
const NONE: readonly WordSense[] = [];

/** What a folded lower-case word can mean; empty for other words. */
export function sensesOf(word: string): readonly WordSense[] {
  return WORDS.get(word) ?? NONE;
}

/** The sense of a word in one role, or null. */
export function senseIn(word: string, role: WordRole): WordSense | null {
  for (const sense of sensesOf(word)) if (sense.role === role) return sense;
  return null;
}

/** The words for a man that slips are mended to; those of further languages lie too near to words of prose. */
export const PIECE_NAMES: readonly string[] = PIECE_WORDS.flatMap(([, words]) =>
  words.split(' ').map(foldWord),
);
