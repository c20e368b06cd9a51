import { IntlMessageFormat } from 'intl-messageformat';
import { describe, expect, it } from 'vitest';
import { CATALOGUE, messageKeys, messageText } from '#lib/words/catalogue/catalogue.ts';
import { say } from '#lib/words/format.ts';
import { LOCALES } from '#lib/words/locale.ts';

type Element = ReturnType<IntlMessageFormat['getAst']>[number];

function parse(message: string): Element[] {
  return new IntlMessageFormat(message, 'en', undefined, { ignoreTag: true }).getAst();
}

/** Kinds of element in the parser's tree: a plain argument, a number, a choice by word, a choice by count. */
const ARGUMENT = 1;
const NUMBER = 2;
const SELECT = 5;
const PLURAL = 6;

/** Name of every parameter of a message -> whether it must be a number. */
function paramsOf(elements: readonly Element[], found = new Map<string, boolean>()): Map<string, boolean> {
  for (const element of elements) {
    if (element.type === ARGUMENT) found.set(element.value, found.get(element.value) ?? false);
    if (element.type === NUMBER) found.set(element.value, true);
    if (element.type === SELECT || element.type === PLURAL) {
      found.set(element.value, (found.get(element.value) ?? false) || element.type === PLURAL);
      for (const option of Object.values(element.options)) paramsOf(option.value, found);
    }
  }
  return found;
}

describe('the message catalogue', () => {
  it('has every key of English in every language, and no other', () => {
    for (const locale of LOCALES) {
      for (const [area, messages] of Object.entries(CATALOGUE.en)) {
        const other = Object.entries(CATALOGUE[locale]).find(([name]) => name === area)?.[1];
        expect(Object.keys(other ?? {}).sort(), `${locale} ${area}`).toEqual(Object.keys(messages).sort());
      }
    }
  });

  it('asks for the same parameters in every language, but for those that a language has no use for', () => {
    for (const key of messageKeys()) {
      const english = paramsOf(parse(messageText('en', key) ?? ''));
      for (const locale of LOCALES) {
        const text = messageText(locale, key) ?? '';
        for (const name of paramsOf(parse(text)).keys()) {
          expect(english.has(name), `${locale} ${key} asks for {${name}}`).toBe(true);
        }
      }
    }
  });

  it('formats every message of every language with its parameters', () => {
    for (const locale of LOCALES) {
      for (const key of messageKeys()) {
        const params: Record<string, string | number> = {};
        for (const [name, isNumber] of paramsOf(parse(messageText(locale, key) ?? ''))) {
          params[name] = isNumber ? 2 : 'x';
        }
        expect(say(locale, key, params).length, `${locale} ${key}`).toBeGreaterThan(0);
      }
    }
  });
});
