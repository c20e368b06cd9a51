// A thing to say, in words short enough to stand beside a name.

import { exhaustive } from '#lib/kit/exhaustive.ts';
import type { ThingToSay } from '#lib/standings/things-to-say.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { numberWords } from './number-words.ts';

/** The words beside a name for one thing to say. */
export function thingWords(thing: ThingToSay, locale: Locale): string {
  switch (thing.code) {
    case 'run':
      return say(locale, 'readout.thing-run', { length: numberWords(thing.length, locale) });
    case 'good-words':
      return say(locale, 'readout.thing-good-words', { words: thing.words.slice(0, 120) });
    case 'put-right':
    case 'topped-ladder':
    case 'only-other-way':
    case 'first-time':
    case 'return':
    case 'found-both':
    case 'best-defence':
      return say(locale, `readout.thing-${thing.code}`);
    default:
      return exhaustive(thing);
  }
}
