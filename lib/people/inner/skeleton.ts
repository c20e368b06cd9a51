// What does a name look like at a glance? A small table of letters of other alphabets and signs that
// are drawn like Latin ones, after the idea of Unicode Technical Standard 39 ("skeleton"); the table
// is our own choice of the common cases, from memory of the alphabets, not the standard's data.

const DRAWN_ALIKE: readonly (readonly [string, string])[] = [
  ['a', 'аαａ@'],
  ['b', 'ЬЪв'],
  ['c', 'сϲ'],
  ['d', 'ԁ'],
  ['e', 'еεёє'],
  ['g', 'ɡ'],
  ['h', 'һнη'],
  ['i', 'іıιl1|!їj'],
  ['k', 'кκ'],
  ['m', 'м'],
  ['n', 'пռ'],
  ['o', 'оο0օѳ'],
  ['p', 'рρ'],
  ['q', 'ԛ'],
  ['s', 'ѕ5$'],
  ['t', 'тτ'],
  ['u', 'υцս'],
  ['v', 'ѵν'],
  ['w', 'ԝшω'],
  ['x', 'хχ'],
  ['y', 'уγү'],
  ['z', '2ζ'],
];

const LETTER_FOR = new Map(
  DRAWN_ALIKE.flatMap(([letter, signs]) => [...signs].map((sign) => [sign, letter])),
);

/**
 * A name reduced to what the eye takes in: compatibility forms opened, marks, case, blanks and
 * punctuation dropped, letters of other alphabets mapped to the Latin ones they are drawn like,
 * "rn" to "m" and "vv" to "w". Two names with one skeleton look alike; the reverse need not hold.
 */
export function skeletonOf(name: string): string {
  const opened = name.normalize('NFKD').toLowerCase();
  let skeleton = '';
  for (const sign of opened) {
    if (/\p{M}/u.test(sign)) continue;
    const letter = LETTER_FOR.get(sign);
    if (letter !== undefined) skeleton += letter;
    else if (/[\p{L}\p{N}\p{S}]/u.test(sign)) skeleton += sign;
  }
  return skeleton.replaceAll('rn', 'm').replaceAll('vv', 'w');
}
