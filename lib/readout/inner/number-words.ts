// Whole numbers as words, for reading aloud, in the languages of the catalogue. Numbers from a
// million on stay figures: a sheet says them in round figures only.

import { exhaustive } from '#lib/kit/exhaustive.ts';
import type { Locale } from '#lib/words/locale.ts';

const EN_SMALL =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const EN_TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];
const DE_SMALL =
  'null eins zwei drei vier fünf sechs sieben acht neun zehn elf zwölf dreizehn vierzehn fünfzehn sechzehn siebzehn achtzehn neunzehn'.split(
    ' ',
  );
const DE_TENS = [
  '',
  '',
  'zwanzig',
  'dreißig',
  'vierzig',
  'fünfzig',
  'sechzig',
  'siebzig',
  'achtzig',
  'neunzig',
];

/** The number as words: 600 is "six hundred", "sechshundert". Bounds: 0 to 999,999; else figures. */
export function numberWords(number: number, locale: Locale): string {
  if (!Number.isInteger(number) || number < 0 || number >= 1_000_000) return String(number);
  switch (locale) {
    case 'en':
      return english(number);
    case 'de':
      return german(number);
    default:
      return exhaustive(locale);
  }
}

function english(number: number): string {
  if (number < 20) return EN_SMALL[number] ?? '';
  if (number < 100) {
    const ones = number % 10;
    return `${EN_TENS[Math.floor(number / 10)] ?? ''}${ones === 0 ? '' : `-${english(ones)}`}`;
  }
  const [unit, word] = number < 1000 ? [100, 'hundred'] : [1000, 'thousand'];
  const rest = number % unit;
  const joint = rest < 100 ? ' and ' : ' ';
  return `${english(Math.floor(number / unit))} ${word}${rest === 0 ? '' : joint + english(rest)}`;
}

function german(number: number): string {
  if (number < 20) return DE_SMALL[number] ?? '';
  if (number < 100) {
    const ones = number % 10;
    const before = ones === 0 ? '' : `${ones === 1 ? 'ein' : german(ones)}und`;
    return before + (DE_TENS[Math.floor(number / 10)] ?? '');
  }
  const [unit, word] = number < 1000 ? [100, 'hundert'] : [1000, 'tausend'];
  const rest = number % unit;
  const count = Math.floor(number / unit);
  return `${count === 1 ? 'ein' : german(count).replace(/eins$/, 'ein')}${word}${rest === 0 ? '' : german(rest)}`;
}
