// What one answer is worth on a loaded book: its text is read anew, and the host's rulings on texts and
// the viewer's own word on what was meant are taken in (rules R6, R8, R14).

import { MOST_ASKED } from '#lib/marking/create-marker.ts';
import { type MarkResult, markAnswer } from '#lib/marking/mark-answer.ts';
import { readText } from '#lib/reading/read-text.ts';
import type { ReadResult } from '#lib/reading/reading.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { AnswerRecord } from '#lib/store/answers.ts';
import { doubtKey, textHash } from './doubt-key.ts';
import type { LoadedBook } from './loaded-book.ts';

/** A mark or what it lacks, and what else the reading told. */
export interface Opinion {
  readonly answer: AnswerRecord;
  readonly result: MarkResult;
  /** Group on the list of doubtful answers; null where nobody is needed. */
  readonly doubt: string | null;
  /** It addresses somebody or only repeats another's (rule P4). */
  readonly isAddressed: boolean;
}

/** Judges an answer. Results of equal texts are kept with the book. */
export function judgeAnswer(loaded: LoadedBook, answer: AnswerRecord): Opinion {
  const { terms, book, scheme, meantByRuling, results } = loaded;

  const position = parseFen(terms.fen);
  if (!position.ok) throw new Error(`The stored position cannot be read: ${terms.fen}`);
  const read = readText({ position: position.value, text: answer.text });
  const ruled = meantByRuling.get(textHash(answer.text)) ?? null;
  const meant = answer.meant ?? ruled;
  // A ruling on a text that reads only with the board turned says that it was turned (rule R14).
  const isTurned = read.turned.length > 0 && ruled !== null ? true : null;
  const mayAsk = MOST_ASKED - answer.asked;
  const isHostsLine = ruled !== null && meant === ruled && !isReadSo(read, ruled);
  const mark = () =>
    isHostsLine
      ? markRuledLine(loaded, ruled, mayAsk)
      : markAnswer({ terms, book, scheme, text: answer.text, meant, read, mayAsk, isTurned });
  // An answer that has asked before may get less: its result is its own.
  const key = answer.asked === 0 ? JSON.stringify([answer.text, meant]) : null;
  const result = (key === null ? null : results.get(key)) ?? mark();
  if (key !== null) results.set(key, result);
  const doubt = result.kind === 'mark' ? doubtKey(terms.fen, answer.text, result.mark, read) : null;
  return { answer, result, doubt, isAddressed: read.isAddressed };
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
