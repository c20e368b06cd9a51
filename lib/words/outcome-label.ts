// What is an outcome called where people see it? The labels of section 4 of the marking rules.

import type { MessageKey } from './catalogue/catalogue.ts';
import { say } from './format.ts';
import type { Locale } from './locale.ts';

/** What the label depends on. `isSlowerNotShown`: unfinished, and a move on the way mates later than asked. */
export interface Labelled {
  readonly outcome:
    | 'solved'
    | 'slower'
    | 'unfinished'
    | 'slipped'
    | 'wrong'
    | 'impossible'
    | 'ambiguous'
    | 'unclear'
    | 'unreadable'
    | 'chatter';
  /** Solver move at which it slips or cannot be played; null where it does neither. */
  readonly atMove: number | null;
  readonly isSlowerNotShown?: boolean;
}

/** "Slips at move 2"; "Mates later, not shown to the end" where that is why it is unfinished. */
export function outcomeLabel(
  { outcome, atMove, isSlowerNotShown = false }: Labelled,
  locale: Locale,
): string {
  const key: MessageKey =
    outcome === 'unfinished' && isSlowerNotShown
      ? 'marking.outcome-slower-not-shown'
      : `marking.outcome-${outcome}`;
  return say(locale, key, { move: atMove ?? 1 });
}
