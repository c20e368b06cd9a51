import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';

const KEYS = [
  'paste',
  'paste-hint',
  'file',
  'file-hint',
  'source',
  'source-hint',
  'exported',
  'exported-hint',
  'time-word',
  'time-word-hint',
  'time-before',
  'time-after',
  'time-unknown',
  'look',
  'store',
  'from-file',
  'columns',
  'column-none',
  'column-author',
  'column-text',
  'column-time',
  'column-link',
  'column-id',
  'column-reply',
  'head-author',
  'head-text',
  'head-read',
  'head-time',
  'known',
] as const;

/** Words of the comments form, by key. */
export type CommentsWords = Readonly<Record<(typeof KEYS)[number], string>>;

/** The form's words in a language; only these travel to the browser. */
export function commentsWords(locale: Locale): CommentsWords {
  const words: Partial<Record<(typeof KEYS)[number], string>> = {};
  for (const key of KEYS) words[key] = say(locale, `desk.comments-${key}`);
  return words as CommentsWords;
}
