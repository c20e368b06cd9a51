// What one answer is worth on a loaded book: its text is read anew, and the host's rulings on texts and
// the viewer's own word on what was meant are taken in (rules R6, R8, R14). At an amended puzzle it is
// judged on the terms that its writer saw, or on the kinder of those that can have been seen (rule A6).

import type { Wanted } from '#lib/book/book-row.ts';
import { bestOf } from '#lib/marking/compare-marks.ts';
import { MOST_ASKED } from '#lib/marking/create-marker.ts';
import { type MarkResult, markAnswer } from '#lib/marking/mark-answer.ts';
import { readText } from '#lib/reading/read-text.ts';
import type { Reading, ReadResult } from '#lib/reading/reading.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import { playUci } from '#lib/rules/uci.ts';
import type { AnswerRecord } from '#lib/store/answers.ts';
import { doubtKey, findReadingPair, TURNED_TEXTS, textHash } from './doubt-key.ts';
import type { LoadedBook } from './loaded-book.ts';
import { revisionsToJudge } from './seen-revisions.ts';

/** A mark or what it lacks, and what else the reading told. */
export interface Opinion {
  readonly answer: AnswerRecord;
  readonly result: MarkResult;
  /** The book that the mark rests on: of the terms in force, or of those that were seen. */
  readonly book: LoadedBook;
  /** What the result lacks, under which terms; empty beside a mark. */
  readonly wants: readonly Wanted[];
  /** Group on the list of doubtful answers; null where nobody is needed. */
  readonly doubt: string | null;
  /** It addresses somebody or only repeats another's (rule P4). */
  readonly isAddressed: boolean;
}

/** Judges an answer. Results of equal texts are kept with the book. */
export function judgeAnswer(loaded: LoadedBook, answer: AnswerRecord): Opinion {
  let mayAsk = MOST_ASKED - answer.asked;
  const opinions = booksSeen(loaded, answer).map((book) => {
    const opinion = judgeOn(book, answer, Math.max(0, mayAsk));
    // What one answer may ask for (mechanics) is shared by the terms it is judged on.
    mayAsk -= new Set(opinion.wants.map(({ position, movesLeft }) => `${position} ${movesLeft}`)).size;
    return opinion;
  });
  const [first, ...others] = opinions;
  if (first === undefined) throw new Error('An answer was to be judged on no terms.');
  if (others.length === 0) return first;
  const wants = opinions.flatMap((one) => one.wants);
  if (wants.length > 0) return { ...first, result: { kind: 'lacking', lacking: wants }, wants, doubt: null };
  return kinderOf(opinions);
}

/** The books of the terms that the writer can have seen, newest first. */
function booksSeen(loaded: LoadedBook, answer: AnswerRecord): LoadedBook[] {
  if (loaded.former.size === 0) return [loaded];
  const former = [...loaded.former.values()];
  const stood = [
    ...former.map(({ replacedAt, book }) => ({ revision: book.revision, terms: book.terms, replacedAt })),
    { revision: loaded.revision, terms: loaded.terms, replacedAt: null },
  ];
  const books = [loaded, ...former.map(({ book }) => book)];
  return revisionsToJudge(answer, loaded.opensAt, stood).flatMap(
    (revision) => books.find((book) => book.revision === revision) ?? [],
  );
}

function judgeOn(loaded: LoadedBook, answer: AnswerRecord, mayAsk: number): Opinion {
  const { terms, book, scheme, meantByRuling, results, revision } = loaded;

  const position = parseFen(terms.fen);
  if (!position.ok) throw new Error(`The stored position cannot be read: ${terms.fen}`);
  const read = readText({ position: position.value, text: answer.text });
  const ruled = rulingHere(position.value, meantByRuling.get(textHash(answer.text)));
  const meant = answer.meant ?? ruled;
  // One ruling says it of all texts that read only with the board turned (rule R14), one on such a text of that one.
  const isTurned =
    read.turned.length > 0 && (ruled !== null || meantByRuling.has(TURNED_TEXTS)) ? true : null;
  const isHostsLine = ruled !== null && meant === ruled && !isReadSo(read, ruled);
  const mark = () =>
    isHostsLine
      ? markRuledLine(loaded, ruled, mayAsk)
      : markByPairs(loaded, read, (readings) =>
          markAnswer({
            ...{ terms, book, scheme, text: answer.text, meant, mayAsk, isTurned },
            read: { ...read, readings },
          }),
        );
  // An answer that has asked before may get less: its result is its own.
  const key = mayAsk === MOST_ASKED ? JSON.stringify([answer.text, meant]) : null;
  const result = (key === null ? null : results.get(key)) ?? mark();
  if (key !== null) results.set(key, result);
  const doubt = result.kind === 'mark' ? doubtKey(terms.fen, answer.text, result.mark, read) : null;
  const lacking = result.kind === 'lacking' ? result.lacking : [];
  const wants = lacking.map((one) => ({ ...one, revision }));
  return { answer, result, book: loaded, wants, doubt, isAddressed: read.isAddressed };
}

/** Rulings that one mark may follow: a text may be in doubt at several places. */
const MOST_PAIRS = 8;

// A ruling on a pair of readings holds for everybody whose text parts there (rule R6): of the readings those that go
// on as it says are left.
function markByPairs(
  { terms, meantByRuling }: LoadedBook,
  { readings }: ReadResult,
  mark: (readings: readonly Reading[]) => MarkResult,
): MarkResult {
  let left = readings;
  let result = mark(left);
  for (let ruled = 0; ruled < MOST_PAIRS && result.kind === 'mark'; ruled += 1) {
    const pair = findReadingPair(terms.fen, result.mark);
    const line = pair === null ? undefined : meantByRuling.get(pair.key);
    if (line === undefined) break;
    const kept = left.filter((reading) => line.every((move, at) => reading.line[at]?.uci === move));
    if (kept.length === 0 || kept.length === left.length) break;
    left = kept;
    result = mark(left);
  }
  return result;
}

// Rule O0's order; of equals the newest terms.
function kinderOf(opinions: readonly Opinion[]): Opinion {
  const marked = opinions.flatMap((opinion) =>
    opinion.result.kind === 'mark' ? [{ ...opinion.result.mark, opinion }] : [],
  );
  const { opinion, ...mark } = bestOf(marked);
  return { ...opinion, result: { kind: 'mark', mark } };
}

// A ruling on a text holds where its line can be played: the position of other terms may not know it.
function rulingHere(start: Position, line: readonly string[] | undefined): readonly string[] | null {
  if (line === undefined) return null;
  let position: Position | null = start;
  for (const move of line) {
    position = playUci(position, move);
    if (position === null) return null;
  }
  return line;
}

function isReadSo({ readings, turned }: ReadResult, line: readonly string[]): boolean {
  return [...readings, ...turned].some((one) => one.line.map((move) => move.uci).join() === line.join());
}

// The host said what an unreadable text means: the line is marked as if it had been written, and no
// characters of the text stand for its moves.
function markRuledLine(
  { terms, book, scheme }: LoadedBook,
  line: readonly string[],
  mayAsk: number,
): MarkResult {
  const result = markAnswer({ terms, book, scheme, text: line.join(' '), mayAsk });
  return result.kind === 'mark' ? { kind: 'mark', mark: { ...result.mark, reading: null } } : result;
}
