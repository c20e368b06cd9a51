// What does a tag of HTML at this place mean for a text of moves: a blank, nothing, or that what follows is
// struck out (rule R3)?

/** Longest tag that is skipped, in characters; longer ones are text. */
const LONGEST = 300;
const STRIKES = new Set(['s', 'del', 'strike']);
/** Tags inside a word or a move: they leave nothing behind. */
const INLINE = new Set([
  'b',
  'i',
  'u',
  'em',
  'strong',
  'span',
  'font',
  'sup',
  'sub',
  'small',
  'big',
  'tt',
  'mark',
]);

/** A tag: where it ends, what it leaves, and whether it opens (true) or closes (false) struck-out text. */
export interface Tag {
  readonly end: number;
  readonly stands: '' | ' ' | '\n';
  readonly strikes: boolean | null;
}

/** The tag that begins at `at` (a `<`), or null: "<3" and "a < b" are text. */
export function tagAt(source: string, at: number): Tag | null {
  let cursor = at + 1;
  const isClosing = source.charAt(cursor) === '/';
  if (isClosing) cursor += 1;
  const nameStart = cursor;
  while (isLetter(source.charCodeAt(cursor)) && cursor - nameStart < 12) cursor += 1;
  const name = source.slice(nameStart, cursor).toLowerCase();
  const next = source.charAt(cursor);
  if (
    name === '' ||
    !(next === '>' || next === ' ' || next === '/' || next === '\n' || (name === 'h' && /\d/.test(next)))
  ) {
    return null;
  }
  const close = source.slice(cursor, cursor + LONGEST).indexOf('>');
  if (close < 0) return null;
  const end = cursor + close + 1;
  if (STRIKES.has(name)) return { end, stands: ' ', strikes: !isClosing };
  const stands = INLINE.has(name) ? '' : name === 'br' || name === 'p' || name === 'div' ? '\n' : ' ';
  return { end, stands, strikes: null };
}

function isLetter(code: number): boolean {
  return (code >= 97 && code <= 122) || (code >= 65 && code <= 90);
}
