import type { Locale } from '#lib/words/locale.ts';

const LETTERS: Readonly<Record<Locale, string>> = { en: 'KQRBN', de: 'KDTLS' };

/** Letters of king, queen, rook, bishop and knight in a language of the pages, in this order. */
export function lettersOf(locale: Locale): string {
  return LETTERS[locale];
}
