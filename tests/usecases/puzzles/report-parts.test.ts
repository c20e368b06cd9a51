import { expect, test } from 'vitest';
import { createBook } from '#lib/book/solution-book.ts';
import { parseStoredReport, reportParts } from '#lib/usecases/puzzles/report-parts.ts';
import { reportOf } from '#lib/usecases/puzzles/soundness.ts';
import { MATE_IN_ONE } from '../../support/build-show.ts';

test("[V9] the parts come in the order of reading, the host's own wording of how far at the end", () => {
  const book = createBook([]);
  const stored: unknown = JSON.parse(JSON.stringify(reportOf(MATE_IN_ONE, book)));
  expect(parseStoredReport(stored)).not.toBeNull();
  const kinds = reportParts(stored, MATE_IN_ONE, { locale: 'en', book, howFar: 'Just the move.' });
  expect(kinds[0]?.kind).toBe('claim');
  expect(kinds.at(-2)?.kind).toBe('published');
  expect(kinds.at(-1)).toEqual({ kind: 'length', sentences: ['Just the move.'] });
  const generated = reportParts(stored, MATE_IN_ONE, { locale: 'de', book, howFar: null });
  expect(generated.at(-1)?.sentences[0]).not.toBe('Just the move.');
});

test('[V9] a report of an unknown version is left out, not guessed at', () => {
  for (const stored of [null, 'x', { v: 2 }]) {
    expect(reportParts(stored, MATE_IN_ONE, { locale: 'en', book: createBook([]), howFar: null })).toEqual(
      [],
    );
  }
});
