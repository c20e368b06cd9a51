// A solution book in which a function gives every verdict: for tests of the walk that need no engine.

import type { BookKey, BookRow } from '#lib/book/book-row.ts';
import type { SolutionBook } from '#lib/book/solution-book.ts';
import type { VerdictWord } from '#lib/engine/verdict.ts';
import type { Uci } from '#lib/rules/move.ts';

/** What the function says of a move. */
export interface RuledVerdict {
  readonly verdict: VerdictWord;
  readonly mateIn?: number | null;
  readonly evident?: boolean | null;
  readonly adequate?: readonly Uci[];
}

/** A book that knows everything `rule` knows; null is a hole. */
export function ruledBook(rule: (key: BookKey) => RuledVerdict | null): SolutionBook {
  return {
    version: 'ruled',
    size: 1,
    find: (key) => {
      const ruled = rule(key);
      return ruled === null ? null : toRow(key, ruled);
    },
    ruling: () => null,
    rowsAt: () => [],
    rows: () => [],
    add: () => {},
    addRulings: () => {},
  };
}

/** A row with everything that the rule leaves out. */
export function toRow(key: BookKey, ruled: RuledVerdict): BookRow {
  const { verdict, mateIn = null, evident = null, adequate = [] } = ruled;
  return {
    ...key,
    verdict,
    mateIn,
    value: null,
    depth: 0,
    nodes: 0,
    evidence: { kind: 'budget' },
    replies: adequate.map((uci) => ({ uci, mateIn: null, value: null })),
    adequate,
    evident,
    stillWinning: null,
    check: 'not-checkable',
    engineVersion: 'ruled',
  };
}
