// Marks judged cases the way the worker does: mark, verify what is lacking, mark again, over one growing book.

import { join } from 'node:path';
import { buildBook } from '#lib/book/build-book.ts';
import { parsePuzzleFile } from '#lib/book/parse-puzzle-file.ts';
import { createBook, type SolutionBook } from '#lib/book/solution-book.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { createJudge, verifyLacking } from '#lib/book/verify.ts';
import type { Engine } from '#lib/engine/create-engine.ts';
import { createTableSet } from '#lib/engine/table-set.ts';
import { createTableFiles } from '#lib/machine/table-files.ts';
import { createMarker, type Marker } from '#lib/marking/create-marker.ts';
import type { Mark } from '#lib/marking/mark.ts';
import type { JudgedCase, JudgedPuzzle } from '../cases/judged/judged-case.ts';

/** Endgame tables are built once a machine: where worker and command line keep theirs. */
const tables = createTableSet(createTableFiles(join(import.meta.dirname, '../../.data/tables')));

/** A puzzle with its book and marker. */
export interface JudgedBook {
  readonly terms: PuzzleTerms;
  readonly book: SolutionBook;
  readonly marker: Marker;
}

/** The terms of a judged puzzle; a file that is refused is a mistake of the case. */
export function termsOf(puzzle: JudgedPuzzle): PuzzleTerms {
  const parsed = parsePuzzleFile(puzzle.file);
  if (!parsed.ok) throw new Error(`${puzzle.name}: ${JSON.stringify(parsed.reason)}`);
  return { ...parsed.value, isStrict: puzzle.strict === true };
}

/** A book as it is before publication, or with `isOnDemand` an empty one that grows as answers want it. */
export function openBook(
  engine: Engine,
  puzzle: JudgedPuzzle,
  isOnDemand = puzzle.isOnDemand === true,
): JudgedBook {
  const terms = termsOf(puzzle);
  const book = isOnDemand
    ? createBook([])
    : buildBook({ terms, judge: createJudge(engine, terms, { tables }) });
  return { terms, book, marker: createMarker({ terms, book }) };
}

/** The mark of a text, verdicts being added as they are wanted, at most 40 positions. */
export function markOnDemand(
  engine: Engine,
  judged: JudgedBook,
  answer: Pick<JudgedCase, 'text' | 'meant'>,
): Mark {
  const { terms, book, marker } = judged;
  let mayAsk = 40;
  for (;;) {
    const result = marker({ text: answer.text, meant: answer.meant ?? null, mayAsk });
    if (result.kind === 'mark') return result.mark;
    mayAsk -= new Set(result.lacking.map(({ position }) => position)).size;
    book.add(verifyLacking(engine, terms, result.lacking, { tables }));
  }
}
