import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';

const KEYS = [
  'position',
  'position-hint',
  'look',
  'look-empty',
  'ply',
  'task',
  'task-mate',
  'task-win',
  'task-draw',
  'moves',
  'published',
  'published-hint',
  'title',
  'title-hint',
  'episode-number',
  'episode-title',
  'opens',
  'closes',
  'zone',
  'scheme',
  'scheme-full-line',
  'scheme-key-move',
  'how-far',
  'how-far-hint',
  'more',
  'any-defence',
  'mate-written',
  'strict',
  'counts-first',
  'solver-moves',
  'solver-moves-hint',
  'save',
] as const;

/** Words of the form for a new puzzle, by key. */
export type FormWords = Readonly<Record<(typeof KEYS)[number], string>>;

/** The form's words in a language; only these travel to the browser. */
export function formWords(locale: Locale): FormWords {
  const words: Partial<Record<(typeof KEYS)[number], string>> = {};
  for (const key of KEYS) words[key] = say(locale, `desk.form-${key}`);
  return words as FormWords;
}
