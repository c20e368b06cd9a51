// Is this a short text that can be kept and shown as somebody wrote it? What cannot be stored or seen
// is made visible, not dropped; whether it is true or kind is nobody's business here.

import { ok, type Result, refuse } from './result.ts';

/** Longest remark of a viewer on a mark, and of a host in return, in characters (rule A2). */
export const REMARK_CHARACTERS = 500;

/** Why a text is not taken. */
export interface ShortTextReason {
  readonly code: 'too-long';
  readonly length: number;
  readonly most: number;
}

// Line feed and tab stay; NUL can be stored nowhere, the rest cannot be seen.
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const UNSEEN = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/gu;

/**
 * The text in NFC, line ends as line feeds, at most one empty line in a row, no blanks at its ends;
 * control characters and halves of surrogate pairs become U+FFFD. Counted in code points after that.
 * Linear in the text's length, which the door has bounded.
 */
export function parseShortText(text: string, most: number): Result<string, ShortTextReason> {
  const clean = text
    .toWellFormed()
    .normalize('NFC')
    .replace(/\r\n?|\u2028|\u2029/gu, '\n')
    .replace(UNSEEN, '\ufffd')
    .replace(/\n(?:[^\S\n]*\n){2,}/gu, '\n\n')
    .trim();
  const length = [...clean].length;
  return length > most ? refuse({ code: 'too-long', length, most }) : ok(clean);
}
