// Texts that try to make a reader slow, wrong or fall over; from a seed, so that each can be made again.

import type { Random } from '#lib/kit/random.ts';

const SQUARES = ['a1', 'b4', 'c3', 'd2', 'e4', 'f7', 'g8', 'h6'];
const PIECES = ['N', 'B', 'R', 'Q', 'K', 'S', 'L', 'D', 'T', 'К', 'Кр', '♘', '♛', 'b', 'n', 'P', ''];
const GLUE = [
  ' ',
  ' ',
  '',
  ',',
  '(',
  ')',
  '[',
  ']',
  '{',
  '}',
  '/',
  '-',
  ' or ',
  ' if ',
  ' no ',
  ' sorry ',
  '?',
  '!',
  '.',
  '...',
];
const WORDS = [
  'knight',
  'takes',
  'queen',
  'to',
  'on',
  'check',
  'mate',
  'castles',
  'long',
  'Springer',
  'schlägt',
  'dama',
  'ферзь',
  'бьёт',
  'at',
  'şah',
  'the',
  'pawn',
  'promotes',
  'fails',
  'threatens',
  'then',
  'and',
  'a',
  'edit',
  'en',
  'passant',
  'file',
  'rank',
];
const STRANGE = [
  '\u200b',
  '\u202e',
  '\u0336',
  '\u{1d410}',
  '\ufe0f',
  '&#35;',
  '&amp;amp;',
  '<b>',
  '</s>',
  '<s>',
  '~~',
  '||',
  '>!',
  '\ud800',
  '\0',
  '\uffff',
  '🔥',
  'ﷺ',
  'ⓠ',
  '＃',
  '٤',
  'е',
  'о-о',
];

const PATTERNS: readonly ((random: Random) => string)[] = [
  () => 'Nd2 '.repeat(1000),
  () => '('.repeat(2000) + ')'.repeat(2000),
  () => '(Nd2 '.repeat(800),
  () => '(1.e4 e5 '.repeat(400) + ')'.repeat(400),
  () => 'O-'.repeat(2000),
  () => 'O-O-O-O '.repeat(500),
  () => '0'.repeat(4000),
  () => 'е4 с5 '.repeat(666),
  () => 'or '.repeat(1333),
  () => 'e4 or d4 or '.repeat(333),
  () => 'no e4 sorry d4 '.repeat(260),
  () => 'Rd7? '.repeat(800),
  () => '&amp;'.repeat(800),
  () => '<'.repeat(4000),
  () => `<b ${'a'.repeat(250)}`.repeat(15),
  () => 'queen takes '.repeat(333),
  () => 'knight on e4 '.repeat(300),
  () => 'a'.repeat(4000),
  () => '1.'.repeat(2000),
  () => 'bxc3 '.repeat(800),
  () => 'e4e5'.repeat(1000),
  () => 'Qxxxxxf7 '.repeat(444),
  () => 'Nff33 '.repeat(666),
  () => 'Kd2 Ke2 '.repeat(500),
  () => 'Ra1 Rb1 Rc1 Rd1 '.repeat(250),
  () => 'if Kf8 then Bxg8 if Kxf7 then Nxe5 '.repeat(110),
  () => 'a8 promotes to a '.repeat(230),
  () => 'ﷺ'.repeat(4000),
  () => '\u0336'.repeat(4000),
  () => 'кинг конь ферзь '.repeat(250),
  () => 'http://a.b/e4 '.repeat(280),
  () => '@a.b'.repeat(1000),
  () => '> e4\n'.repeat(800),
  () => '[Event "x"]\n'.repeat(330),
  (random) => Array.from({ length: 800 }, () => `${random.pick(PIECES)}${random.pick(SQUARES)}`).join(' '),
  (random) =>
    Array.from({ length: 600 }, () => random.pick(PIECES) + random.pick(SQUARES) + random.pick(GLUE)).join(
      '',
    ),
  (random) => Array.from({ length: 700 }, () => random.pick(WORDS)).join(' '),
  (random) => Array.from({ length: 600 }, () => random.pick([...WORDS, ...SQUARES])).join(' '),
  (random) => Array.from({ length: 1000 }, () => random.pick([...STRANGE, ...SQUARES, ...PIECES])).join(''),
];

/** A hostile text of up to about 4,000 characters. */
export function hostileText(random: Random): string {
  return random.pick(PATTERNS)(random);
}

/** A short text of moves, words and strange signs in any order. */
export function randomText(random: Random): string {
  const parts: string[] = [];
  const length = 1 + random.int(24);
  for (let count = 0; count < length; count += 1) {
    const kind = random.int(10);
    if (kind < 5)
      parts.push(random.pick(PIECES) + random.pick(['', '', 'x', '-', ':']) + random.pick(SQUARES));
    else if (kind < 7) parts.push(random.pick(WORDS));
    else if (kind < 8) parts.push(random.pick(STRANGE));
    else if (kind < 9) parts.push(`${random.int(40)}${random.pick(['.', '...', ')', ''])}`);
    else parts.push(String.fromCharCode(random.int(random.int(2) === 0 ? 128 : 65536)));
    parts.push(random.pick(GLUE));
  }
  return parts.join('');
}

/**
 * Words of real texts in any order: pairs that nobody would write side by side have ended in a loop before.
 * `vocabulary`: the words to draw from (`vocabularyOf`).
 */
export function shuffledText(random: Random, vocabulary: readonly string[]): string {
  return Array.from({ length: 2 + random.int(9) }, () => random.pick(vocabulary)).join(' ');
}

/** Each different word of the texts, in the order in which they come. */
export function vocabularyOf(texts: readonly string[]): string[] {
  return [...new Set(texts.flatMap((text) => text.split(/\s+/)).filter((word) => word !== ''))];
}

/** A real text with up to four characters changed, dropped, doubled or moved. */
export function mutatedText(random: Random, text: string): string {
  let mutated = text;
  const changes = 1 + random.int(4);
  for (let count = 0; count < changes; count += 1) {
    const at = random.int(mutated.length + 1);
    const rest = mutated.slice(at + 1);
    const kind = random.int(5);
    if (kind === 0) mutated = mutated.slice(0, at) + rest;
    else if (kind === 1) mutated = mutated.slice(0, at) + mutated.charAt(at) + mutated.slice(at);
    else if (kind === 2)
      mutated = mutated.slice(0, at) + random.pick([...STRANGE, ...GLUE, ...SQUARES]) + mutated.slice(at);
    else if (kind === 3) mutated = mutated.slice(0, at) + String.fromCharCode(32 + random.int(95)) + rest;
    else mutated = mutated.slice(at) + mutated.slice(0, at);
  }
  return mutated;
}
