// `book --puzzle FILE [--budget-nodes N]`: a row of the solution book a line, the soundness report last.

import { explainSoundness } from '#lib/book/explain-soundness.ts';
import { writeSoundnessReport } from '#lib/book/write-soundness-report.ts';
import type { Values } from './inner/arguments.ts';
import { openBook } from './inner/open-book.ts';
import { answer, complain } from './inner/output.ts';
import { readPuzzle } from './inner/read-puzzle.ts';

export async function runBook(values: Values): Promise<number> {
  const terms = readPuzzle(values);
  if (!terms.ok) {
    complain(`book: ${terms.reason}`);
    return 2;
  }
  const { book } = await openBook(terms.value);
  for (const row of book.rows()) await answer(row);
  const report = writeSoundnessReport(terms.value, book);
  const sentences = explainSoundness(report, terms.value, 'en').flatMap((part) => part.sentences);
  await answer({ soundness: report, sentences });
  return 0;
}
