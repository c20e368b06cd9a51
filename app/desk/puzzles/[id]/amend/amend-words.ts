import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { type FormWords, formWords } from '../../new/form-words.ts';

const KEYS = [
  'amend-ask',
  'amend-bounds',
  'amend-win-bound',
  'amend-slip-bound',
  'amend-draw-bound',
  'amend-draw-slip-bound',
  'correction-note-needed',
  'correction-note-hint',
] as const;

/** Words of the form that corrects a puzzle, by key: those of a new puzzle and its own. */
export type AmendWords = FormWords & Readonly<Record<(typeof KEYS)[number], string>>;

/** The form's words in a language; only these travel to the browser. */
export function amendWords(locale: Locale): AmendWords {
  const words = Object.fromEntries(KEYS.map((key) => [key, say(locale, `desk.${key}`)]));
  return { ...formWords(locale), ...words } as AmendWords;
}
