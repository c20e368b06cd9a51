// `mark --puzzle FILE [--scheme NAME] [--strict]`: answers in, marks out, a line each.

import type { SolutionBook } from '#lib/book/solution-book.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { MOST_ASKED } from '#lib/marking/create-marker.ts';
import { explainMark } from '#lib/marking/explain-mark.ts';
import type { Mark, MarkedMove } from '#lib/marking/mark.ts';
import { markAnswer } from '#lib/marking/mark-answer.ts';
import type { Uci } from '#lib/rules/move.ts';
import type { Values } from './inner/arguments.ts';
import { answerLines, type Fields, idField, textField } from './inner/json-lines.ts';
import { openBook, type Verify } from './inner/open-book.ts';
import { complain } from './inner/output.ts';
import { readPuzzle } from './inner/read-puzzle.ts';

export async function runMark(values: Values): Promise<number> {
  const terms = readPuzzle(values);
  if (!terms.ok) {
    complain(`mark: ${terms.reason}`);
    return 2;
  }
  const { book, verify } = await openBook(terms.value);
  return answerLines((fields) => {
    const answer = answerFrom(fields);
    if (!answer.ok) return answer;
    const { id, text, meant } = answer.value;
    return ok({ id, ...answerFor(terms.value, markWithBook(terms.value, { book, verify, text, meant })) });
  });
}

interface Answer {
  readonly id: string | number;
  readonly text: string;
  readonly meant: readonly Uci[] | null;
}

function answerFrom(fields: Fields): Result<Answer, string> {
  const id = idField(fields);
  if (!id.ok) return id;
  const text = textField(fields, 'text');
  if (!text.ok) return text;
  const meant = meantField(fields);
  if (!meant.ok) return meant;
  // Who answered and when change no mark of a puzzle that has no opening and no close; but nonsense is told.
  for (const name of ['author', 'at']) {
    const given = fields[name] === undefined ? ok('') : textField(fields, name);
    if (!given.ok) return given;
  }
  return ok({ id: id.value, text: text.value, meant: meant.value });
}

function meantField({ meant }: Fields): Result<readonly Uci[] | null, string> {
  if (meant === undefined || meant === null) return ok(null);
  const isLine = Array.isArray(meant) && meant.every((uci) => typeof uci === 'string');
  if (isLine) return ok(meant);
  return refuse(
    `"meant": expected a list of moves such as ["e2e4"], found ${JSON.stringify(meant).slice(0, 60)}`,
  );
}

/** The mark; positions that the book lacks are verified and join it, as in the worker. */
function markWithBook(
  terms: PuzzleTerms,
  work: {
    readonly book: SolutionBook;
    readonly verify: Verify;
    readonly text: string;
    readonly meant: readonly Uci[] | null;
  },
): Mark {
  const { book, verify, text, meant } = work;
  let asked = 0;
  for (;;) {
    const result = markAnswer({ terms, book, text, meant, mayAsk: Math.max(0, MOST_ASKED - asked) });
    if (result.kind === 'mark') return result.mark;
    asked += new Set(result.lacking.map(({ position, movesLeft }) => `${position} ${movesLeft}`)).size;
    book.add(verify(result.lacking));
  }
}

function answerFor(terms: PuzzleTerms, mark: Mark): object {
  const { outcome, flags, points, p, r, line, verdicts } = mark;
  const explanation = explainMark(mark, terms, 'en');
  return { outcome, flags, points, p, r, line, verdicts: verdicts.map(verdictFor), explanation };
}

function verdictFor({ uci, verdict, mateIn, value, by }: MarkedMove): object {
  return {
    uci,
    verdict,
    ...(mateIn === null ? {} : { mateIn }),
    ...(value === null ? {} : { value }),
    ...(by === null ? {} : { by }),
  };
}
