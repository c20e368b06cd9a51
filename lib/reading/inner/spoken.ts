// What words inside a written move mean: "e four", "B takes h7".

import { isLetterAt } from './signs.ts';
import { senseIn } from './word-table.ts';

/** Longest word that is looked at. */
const LONGEST = 12;
/** Numbers as they are dictated; those of Romance languages follow "e" and "a" in prose. */
const RANKS: ReadonlyMap<string, number> = new Map(
  [
    'one eins',
    'two zwei',
    'three drei',
    'four vier',
    'five funf',
    'six sechs',
    'seven sieben',
    'eight acht',
  ].flatMap((words, rank) => words.split(' ').map((word): [string, number] => [word, rank])),
);

/** The end of the letters from `at`, at most a dozen. */
export function wordEnd(text: string, at: number): number {
  let end = at;
  while (end < at + LONGEST && isLetterAt(text, end)) end += 1;
  return end;
}

/** The end of a word that means "takes" at this place, with a blank behind it; 0 where there is none. */
export function takingWordAt(text: string, at: number): number {
  const end = wordEnd(text, at);
  return end > at + 1 &&
    text.charAt(end) === ' ' &&
    senseIn(text.slice(at, end).toLowerCase(), 'take') !== null
    ? end
    : 0;
}

/** A rank dictated behind a file's letter, from the blank between them ("e four"); null where there is none. */
export function spokenRankAt(
  text: string,
  at: number,
): { readonly rank: number; readonly end: number } | null {
  if (text.charAt(at) !== ' ') return null;
  const end = wordEnd(text, at + 1);
  const rank = RANKS.get(text.slice(at + 1, end));
  return rank === undefined ? null : { rank, end };
}
