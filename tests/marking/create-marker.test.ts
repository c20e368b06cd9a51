// Rule O0 against an independent oracle: every sequence of events of a line up to five, each with one outcome.

import { describe, expect, it } from 'vitest';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { createMarker } from '#lib/marking/create-marker.ts';
import type { Mark, Outcome } from '#lib/marking/mark.ts';
import type { ReadMove, ReadResult } from '#lib/reading/reading.ts';
import { ruledBook } from '../support/ruled-book.ts';

const EVENTS = ['holds', 'slower', 'slips', 'unclear', 'finishes', 'illegal', 'weak', 'end'] as const;
type Event = (typeof EVENTS)[number];

const MOVES = 20;
const terms: PuzzleTerms = {
  ...DEFAULT_TERMS,
  fen: '7k/8/8/8/8/8/PPPPP3/7K w - - 0 1',
  task: { kind: 'mate', moves: MOVES },
};

/** The pawn that stands for a verdict. */
const FILE: Readonly<Record<string, Event>> = {
  a: 'holds',
  b: 'slower',
  c: 'slips',
  d: 'unclear',
  e: 'finishes',
};

// The verdict hangs on the pawn that moves; going to and fro between h8 and g8 is adequate, other replies are not.
const book = ruledBook(({ move, movesLeft }) => {
  const event = FILE[move[0] ?? ''];
  const left = movesLeft ?? 0;
  const adequate = ['h8g8', 'g8h8'];
  switch (event) {
    case 'holds':
      return { verdict: 'holds', mateIn: left, adequate };
    case 'slower':
      return { verdict: 'slower', mateIn: left + 1, adequate };
    case 'finishes':
      return { verdict: 'holds', mateIn: 2, adequate };
    case 'slips':
      return { verdict: 'slips' };
    default:
      return { verdict: 'unclear' };
  }
});

/** The text of a sequence as the reader gives it: moves up to the first that cannot be played. */
function readingOf(events: readonly Event[]): ReadResult {
  const line: ReadMove[] = [];
  const ranks: Record<string, number> = { a: 2, b: 2, c: 2, d: 2, e: 2 };
  let king = 'h8';
  let impossibleAt: number | null = null;
  const push = (uci: string, by: 'solver' | 'defender') =>
    line.push({ uci, by, start: 0, end: 0, isTypo: false });
  for (const event of events) {
    const isReplyDue = line.at(-1)?.by === 'solver';
    if (event === 'end') break;
    if (event === 'illegal' || (event === 'weak' && !isReplyDue)) {
      impossibleAt = line.length + 1;
      break;
    }
    if (isReplyDue) {
      const to = event === 'weak' ? (king === 'g7' ? 'h7' : 'g7') : king === 'h8' ? 'g8' : 'h8';
      if (event !== 'weak' && king === 'h7') push('h7g8', 'defender');
      else push(king + to, 'defender');
      king = event !== 'weak' && king === 'h7' ? 'g8' : to;
      if (event === 'weak') continue;
    }
    const file = Object.keys(FILE).find((key) => FILE[key] === event) ?? 'a';
    const rank = ranks[file] ?? 2;
    push(`${file}${rank}${file}${rank + 1}`, 'solver');
    ranks[file] = rank + 1;
  }
  return {
    kind: 'answer',
    readings: [
      {
        line,
        branches: [],
        choices: [],
        tries: [],
        impossibleAt,
        impossibleSpan: null,
        isSolverOnly: false,
        isGenerous: false,
      },
    ],
    isCut: false,
    isCutBySource: false,
    isAddressed: false,
    turned: [],
    firstUnread: null,
    readerVersion: 0,
  };
}

interface Expected {
  readonly outcome: Outcome;
  readonly p: number;
  readonly r: number;
  readonly atMove: number | null;
  readonly isWeak: boolean;
  readonly isPast: boolean;
}

/** The rule, word for word and without the walk: the first thing from the left that decides. */
function oracle(events: readonly Event[]): Expected {
  let moves = 0;
  let p = 0;
  let hasSlower = false;
  let isReplyDue = false;
  const needed = events[0] === 'finishes' ? 1 : MOVES - 1;
  const done = (outcome: Outcome, more: Partial<Expected> = {}): Expected => {
    const isFinished = outcome === 'solved' || outcome === 'slower';
    const r = isFinished ? needed : Math.max(needed, p + 1);
    return { outcome, p, r, atMove: null, isWeak: false, isPast: false, ...more };
  };
  for (const [at, event] of events.entries()) {
    switch (event) {
      case 'end':
        return done('unfinished');
      case 'illegal':
        return done('impossible', { atMove: isReplyDue ? moves : moves + 1 });
      case 'weak':
        if (!isReplyDue) return done('impossible', { atMove: moves + 1 });
        return done('unfinished', { isWeak: true });
      case 'slips':
        return done(moves === 0 ? 'wrong' : 'slipped', { atMove: moves + 1 });
      case 'unclear':
        return done('unclear');
      case 'holds':
      case 'slower':
      case 'finishes':
        moves += 1;
        hasSlower ||= event === 'slower';
        if (!hasSlower) p += 1;
        isReplyDue = true;
        if (event === 'finishes') {
          return done(hasSlower ? 'slower' : 'solved', { isPast: goesWrong(events.slice(at + 1)) });
        }
    }
  }
  return done('unfinished');
}

/** After the end: a later solver move slips or cannot be played. */
function goesWrong(rest: readonly Event[]): boolean {
  let isReplyDue = true;
  for (const event of rest) {
    if (event === 'end') return false;
    if (event === 'slips' || event === 'illegal') return true;
    if (event === 'weak' && !isReplyDue) return true;
    isReplyDue = event !== 'weak';
  }
  return false;
}

function sequences(length: number): Event[][] {
  if (length === 0) return [[]];
  return sequences(length - 1).flatMap((head) => EVENTS.map((event) => [...head, event]));
}

function found(mark: Mark): Expected {
  const { outcome, p, r, atMove, flags } = mark;
  return {
    outcome,
    p,
    r,
    atMove,
    isWeak: flags.includes('weak-defence'),
    isPast: flags.includes('past-the-end'),
  };
}

describe('createMarker', () => {
  it.each([1, 2, 3, 4, 5])(
    '[O0] every sequence of %i events has the one outcome that the rule gives',
    (length) => {
      const marker = createMarker({ terms, book });
      let count = 0;
      for (const events of sequences(length)) {
        const result = marker({ text: '', read: readingOf(events) });
        if (result.kind !== 'mark') throw new Error(`lacking: ${events.join(' ')}`);
        const expected = oracle(events);
        const mark = found(result.mark);
        // Comparing first is some 50 times as fast as asking the assertion 37,000 times.
        if (JSON.stringify(mark) !== JSON.stringify(expected))
          expect(mark, events.join(' ')).toEqual(expected);
        count += 1;
      }
      expect(count).toBe(EVENTS.length ** length);
    },
  );

  it('[O0] a verdict that the book lacks is asked for, with the position to verify', () => {
    const marker = createMarker({ terms, book: ruledBook(() => null) });
    expect(marker({ text: '', read: readingOf(['holds']) })).toEqual({
      kind: 'lacking',
      lacking: [
        {
          position: '7k/8/8/8/8/8/PPPPP3/7K w - -',
          movesLeft: MOVES,
          move: 'a2a3',
          fen: '7k/8/8/8/8/8/PPPPP3/7K w - - 0 1',
        },
      ],
    });
  });

  it('[O0] an answer that may ask for nothing more is unclear where the book has a hole', () => {
    const marker = createMarker({ terms, book: ruledBook(() => null) });
    const result = marker({ text: '', read: readingOf(['holds']), mayAsk: 0 });
    expect(result.kind === 'mark' && [result.mark.outcome, result.mark.reason.code]).toEqual([
      'unclear',
      'not-verified',
    ]);
  });
});
