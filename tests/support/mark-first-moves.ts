// Marks every first move of a published mate, each as an answer of its own.

import type { BookRow } from '#lib/book/book-row.ts';
import { askAll } from '#lib/book/question.ts';
import { createBook } from '#lib/book/solution-book.ts';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { createJudge } from '#lib/book/verify.ts';
import type { Engine } from '#lib/engine/create-engine.ts';
import { createMarker } from '#lib/marking/create-marker.ts';
import type { Mark } from '#lib/marking/mark.ts';
import { writeSan } from '#lib/rules/san.ts';
import { findUci } from '#lib/rules/uci.ts';
import { positionOf } from './positions.ts';

/** One first move with its mark and the row behind it. */
export interface MarkedFirstMove {
  readonly row: BookRow;
  readonly mark: Mark;
}

/** Every legal first move as a text of one move in short notation, marked. */
export function markFirstMoves(engine: Engine, fen: string, moves: number): MarkedFirstMove[] {
  const terms: PuzzleTerms = { ...DEFAULT_TERMS, fen, task: { kind: 'mate', moves } };
  const start = positionOf(fen);
  const question = askAll(start, moves, createBook([]));
  const rows = question === null ? [] : createJudge(engine, terms)(question);
  const marker = createMarker({ terms, book: createBook(rows) });
  return rows.map((row) => {
    const move = findUci(start, row.move);
    if (move === null) throw new Error(`${row.move} is not legal in ${fen}`);
    const marked = marker({ text: writeSan(start, move), mayAsk: 0 });
    if (marked.kind !== 'mark') throw new Error('nothing may be asked for');
    return { row, mark: marked.mark };
  });
}

/** What a first move comes to: right, slower with its proof, wrong with its refutation, or not as it should be. */
export function standingOf(
  { row, mark }: MarkedFirstMove,
  keys: readonly string[],
): 'key' | 'slower' | 'wrong' | 'fault' {
  if (keys.includes(row.move)) return mark.p === 1 && mark.verdicts[0]?.verdict === 'holds' ? 'key' : 'fault';
  const isEvident = row.check === 'passed' || row.check === 'too-large';
  if (mark.outcome === 'wrong') return row.evidence.kind === 'refutation' && isEvident ? 'wrong' : 'fault';
  const isSlower = mark.verdicts[0]?.verdict === 'slower' && mark.p === 0;
  return isSlower && isEvident && (mark.outcome === 'slower' || mark.reason.code === 'slower-not-shown')
    ? 'slower'
    : 'fault';
}
