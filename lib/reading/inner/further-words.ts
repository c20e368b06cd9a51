// Words for men and moves in languages beyond those of word-table.ts: Dutch, Polish, Swedish, Danish,
// Norwegian, Czech, Hungarian, Finnish, Romanian, Ukrainian, Greek, Indonesian (from memory). Exact words only (rule R13
// mends none of them), and none that is common prose in one of the usual languages.

import { KIND_BIT } from '#lib/rules/moves-to.ts';
import type { WordRole } from './word-role.ts';

/** Kinds of men and their names; accents are folded away. */
export const FURTHER_PIECES: readonly (readonly [kinds: number, words: string])[] = [
  [
    KIND_BIT.k,
    'koning królem krol król króla kung kungen konge kongen král králem király kuningas regele βασιλιάς βασιλιά βασιλιας raja',
  ],
  [
    KIND_BIT.q,
    `koningin hetman hetmanem hetmana królowa królową damą damę drottning drottningen damen dronning dronningen dronninga
     dáma dámou dámu vezér vezérrel kuningatar daami βασίλισσα βασιλισσα ντάμα menteri`,
  ],
  [
    KIND_BIT.r,
    `toren torens wieża wieżą wieżę tornet tårn tårnet věž věží bástya bástyával torni tornilla turnul тура турою туру
     πύργος πύργο πυργος benteng`,
  ],
  [
    KIND_BIT.b,
    `loper lopers raadsheer goniec gońcem gońca laufer löpare löparen løber løberen løper løperen střelec střelcem futó futóval
     lähetti lähetillä nebunul αξιωματικός αξιωματικό αξιωματικος gajah`,
  ],
  [
    KIND_BIT.n,
    `paard paarden skoczek skoczkiem skoczka koń koniem springare springaren springeren häst hästen hest hesten jezdec jezdcem
     kůň huszár huszárral ratsu ratsulla calul кінь конем ίππος ίππο άλογο kuda`,
  ],
  [
    KIND_BIT.p,
    `pion pionnen pionek pionem piona bonde bonden pěšec pěšcem gyalog gyaloggal sotilas pionul пішак пішаком πιόνι bidak`,
  ],
];

/** Parts of speech and their words. */
export const FURTHER_ROLES: readonly (readonly [role: WordRole, words: string])[] = [
  [
    'take',
    `slaat slaan neemt neem bije zbija bierze slår bere bije vezme braní üti leüti ütés lyö syö ia б'є бере
     παίρνει τρώει makan memakan`,
  ],
  [
    'go',
    'gaat speelt komt idzie gra zagrywa går spiller spelar flyttar jde hraje táhne lép lépik siirtyy йде грає πάει παίζει',
  ],
  [
    'promote',
    `promoveert promoveren promotie wordt maakt promuje promocja zamienia förvandlas förvandling blir bliver promoveres
     promění proměna átváltozik korottuu перетворюється перетворення προάγεται`,
  ],
  [
    'castle',
    `rokade rokeert rokeren rokeer roszada roszadę rokuje rockad rockerar rokerar rokkade rošáda rošádu sánc sáncol tornitus linnoitus
     linnoittaa рокіровка рокіровку rocada rocadă ροκέ`,
  ],
  ['short', 'korte kort krótka krótką krótko kort malá malou rövid lyhyt коротка коротку μικρό mică pendek'],
  ['long', 'długa długą długo lång långt velká velkou hosszú pitkä довга довгу μεγάλο mare panjang'],
  [
    'check',
    `schaak schaakmat szach szachem szachmat schack schackmatt skak skakmat sjakk sjakkmatt šach šachmat sakk sakkmatt
     shakki matti šachem σαχ ματ skakmat`,
  ],
  ['to', 'naar tot till til στο'],
  ['on', 'op på na στο'],
  ['from', 'van från fra od από dari'],
  ['article', 'het een'],
];

/** Names that are words of prose as well, with a plain name of the same man: counted only before a square or "takes". */
export const NAMES_BEFORE_A_SQUARE: ReadonlyMap<string, string> = new Map([
  ['dam', 'dame'],
  ['torn', 'tower'],
  ['rok', 'rook'],
  ['kng', 'king'],
  ['night', 'knight'],
  ['nite', 'knight'],
]);
