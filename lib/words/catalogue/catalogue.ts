// The message catalogue: every sentence that people see, by language, area and key. English is the
// measure: its keys are the type, and a language that lacks one does not compile. A new area is one
// file in each language's folder and one line in each table below.

import type { Locale } from '../locale.ts';
import { boardDe } from './de/board.ts';
import { bookDe } from './de/book.ts';
import { deskDe } from './de/desk.ts';
import { markingDe } from './de/marking.ts';
import { movesDe } from './de/moves.ts';
import { pagesDe } from './de/pages.ts';
import { readoutDe } from './de/readout.ts';
import { rulesDe } from './de/rules.ts';
import { rulesPageDe } from './de/rules-page.ts';
import { boardEn } from './en/board.ts';
import { bookEn } from './en/book.ts';
import { deskEn } from './en/desk.ts';
import { markingEn } from './en/marking.ts';
import { movesEn } from './en/moves.ts';
import { pagesEn } from './en/pages.ts';
import { readoutEn } from './en/readout.ts';
import { rulesEn } from './en/rules.ts';
import { rulesPageEn } from './en/rules-page.ts';

const en = {
  board: boardEn,
  book: bookEn,
  desk: deskEn,
  marking: markingEn,
  moves: movesEn,
  pages: pagesEn,
  readout: readoutEn,
  'rules-page': rulesPageEn,
  rules: rulesEn,
} as const;

/** The messages of one language: the same areas and keys as English. */
export type Messages = { readonly [A in keyof typeof en]: Readonly<Record<keyof (typeof en)[A], string>> };

const de: Messages = {
  board: boardDe,
  book: bookDe,
  desk: deskDe,
  marking: markingDe,
  moves: movesDe,
  pages: pagesDe,
  readout: readoutDe,
  'rules-page': rulesPageDe,
  rules: rulesDe,
};

/** Every language's messages. */
export const CATALOGUE: Readonly<Record<Locale, Messages>> = { en, de };

/** `area.key`, as in `marking.outcome-solved`. */
export type MessageKey = {
  [A in keyof typeof en]: `${A}.${Extract<keyof (typeof en)[A], string>}`;
}[keyof typeof en];

/** Every key there is, in the order of the English tables. */
export function messageKeys(): MessageKey[] {
  const keys: MessageKey[] = [];
  for (const [area, messages] of Object.entries(en)) {
    for (const key of Object.keys(messages)) {
      const whole = `${area}.${key}`;
      if (isMessageKey(whole)) keys.push(whole);
    }
  }
  return keys;
}

/** True where the text is the key of a message. */
export function isMessageKey(text: string): text is MessageKey {
  return messageText('en', text) !== null;
}

/** The message under a key in ICU form, or null where there is none. */
export function messageText(locale: Locale, key: string): string | null {
  const dot = key.indexOf('.');
  const areas: Readonly<Record<string, Readonly<Record<string, string>>>> = CATALOGUE[locale];
  const area = key.slice(0, dot);
  if (!Object.hasOwn(areas, area)) return null;
  const messages = areas[area];
  const name = key.slice(dot + 1);
  return messages !== undefined && Object.hasOwn(messages, name) ? (messages[name] ?? null) : null;
}
