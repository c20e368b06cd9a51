// The answer in words, at most 25 of them: the key with weight, then as much of the main line as fits.

import type { Task } from '#lib/book/terms.ts';
import type { Uci } from '#lib/rules/move.ts';
import { positionEnd } from '#lib/rules/position-end.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { countWords } from '../reading-time.ts';
import { capitalised, positionAfter, spokenUci } from './spoken-uci.ts';

/** Most words of the answer on the sheet. */
export const MOST_ANSWER_WORDS = 25;

/** The answer: `lead` is the key, `text` the line after it and how it ends. */
export function writeAnswer(
  facts: { readonly fen: string; readonly task: Task; readonly line: readonly Uci[] },
  locale: Locale,
): { lead: string; text: string } {
  const { fen, task, line } = facts;
  const key = line[0];
  if (key === undefined) throw new Error('a sheet needs an answer');
  const lead = capitalised(say(locale, 'readout.key', { move: spokenUci(fen, [], key, locale) }), locale);
  let text = '';
  for (let played = 1; ; played += 2) {
    const end = endWords(fen, line.slice(0, played), task, locale);
    const whole = [text, end].filter((part) => part !== '').join(' ');
    const next = played + 1 < line.length ? ifThen(fen, line, played, locale) : null;
    const longer = next === null ? null : [text, next].filter((part) => part !== '').join(' ');
    const longerEnd = longer === null ? '' : endWords(fen, line.slice(0, played + 2), task, locale);
    if (longer === null || countWords(`${lead} ${longer} ${longerEnd}`) > MOST_ANSWER_WORDS) {
      return { lead, text: countWords(`${lead} ${whole}`) <= MOST_ANSWER_WORDS ? whole : text };
    }
    text = longer;
  }
}

function ifThen(fen: string, line: readonly Uci[], at: number, locale: Locale): string {
  const reply = spokenUci(fen, line.slice(0, at), line[at] ?? '', locale);
  const move = spokenUci(fen, line.slice(0, at + 1), line[at + 1] ?? '', locale);
  return capitalised(say(locale, 'readout.if-then', { reply, move }), locale);
}

// After mate on the board nothing need be said; before it, that mate follows.
function endWords(fen: string, played: readonly Uci[], task: Task, locale: Locale): string {
  if (positionEnd(positionAfter(fen, played)) === 'checkmate') return '';
  return say(locale, `readout.end-${task.kind}`);
}
