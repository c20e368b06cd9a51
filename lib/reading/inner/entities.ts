// Which character does an HTML entity at this place stand for? Exports of comments are full of them, some
// escaped twice.

const NAMED: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  nbsp: ' ',
  ensp: ' ',
  emsp: ' ',
  thinsp: ' ',
  num: '#',
  times: 'x',
  ndash: '-',
  mdash: '-',
  minus: '-',
  hyphen: '-',
  shy: '',
  zwnj: '',
  zwj: '',
  lrm: '',
  rlm: '',
  hellip: '...',
  dagger: '+',
  Dagger: '#',
  ne: '#',
  plus: '+',
  equals: '=',
  excl: '!',
  quest: '?',
  colon: ':',
  semi: ';',
  comma: ',',
  period: '.',
  lpar: '(',
  rpar: ')',
  lsqb: '[',
  rsqb: ']',
  sol: '/',
  ast: '*',
  vert: '|',
  rarr: '-',
  plusmn: ' ',
  half: ' ',
  bull: ' ',
  middot: ' ',
  laquo: '"',
  raquo: '"',
  ldquo: '"',
  rdquo: '"',
  bdquo: '"',
  lsquo: "'",
  rsquo: "'",
  auml: 'ä',
  ouml: 'ö',
  uuml: 'ü',
  Auml: 'Ä',
  Ouml: 'Ö',
  Uuml: 'Ü',
  szlig: 'ß',
  eacute: 'é',
  Eacute: 'É',
  egrave: 'è',
  aacute: 'á',
  oacute: 'ó',
  atilde: 'ã',
  otilde: 'õ',
  ccedil: 'ç',
  ntilde: 'ñ',
};

/** Longest entity that is looked for. */
const LONGEST = 12;

/** The entity that begins at `at` (an ampersand): what it stands for and where it ends; null where there is none. */
export function entityAt(source: string, at: number): { readonly text: string; readonly end: number } | null {
  let start = at + 1;
  // "&amp;nbsp;" was escaped twice, "&amp;amp;#35;" three times.
  for (let rounds = 0; rounds < 3 && source.startsWith('amp;', start); rounds += 1) {
    const inner = single(source, start + 4);
    if (inner === null) break;
    if (inner.text !== '&') return inner;
    start += 4;
  }
  return single(source, start);
}

function single(source: string, start: number): { readonly text: string; readonly end: number } | null {
  const stop = source.slice(start, start + LONGEST).indexOf(';');
  if (stop < 1) return null;
  const name = source.slice(start, start + stop);
  const end = start + stop + 1;
  if (name.startsWith('#')) {
    const isHex = name.charAt(1) === 'x' || name.charAt(1) === 'X';
    const digits = name.slice(isHex ? 2 : 1);
    if (!(isHex ? /^[0-9a-fA-F]{1,6}$/ : /^[0-9]{1,7}$/).test(digits)) return null;
    const point = Number.parseInt(digits, isHex ? 16 : 10);
    if (point === 0 || point > 0x10ffff || (point >= 0xd800 && point < 0xe000)) return { text: ' ', end };
    return { text: String.fromCodePoint(point), end };
  }
  const text = Object.hasOwn(NAMED, name) ? NAMED[name] : undefined;
  return text === undefined ? null : { text, end };
}
