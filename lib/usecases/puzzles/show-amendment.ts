// The desk page that corrects a published puzzle: the form filled in with what stands now, or the amendment in
// the making with its soundness report and what it would change.

import { createBook } from '#lib/book/solution-book.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { type Change, whatChanged } from '#lib/puzzle/correction.ts';
import { type AmendmentRecord, loadCancelledAmendment, loadOpenAmendment } from '#lib/store/amendments.ts';
import { countAnswers } from '#lib/store/answers.ts';
import { budgetsKey, loadBookRows } from '#lib/store/books.ts';
import { db } from '#lib/store/client.ts';
import { loadProgress, type ProgressRecord } from '#lib/store/progress.ts';
import { loadTerms, type PuzzleRecord } from '#lib/store/puzzles.ts';
import type { TermsWords } from '#lib/store/stored-terms.ts';
import type { Locale } from '#lib/words/locale.ts';
import { countFailingLines } from './failing-lines.ts';
import { type DeskPuzzle, openDeskPuzzle } from './open-desk-puzzle.ts';
import { AMENDABLE } from './propose-amendment.ts';
import { type ReportPart, reportParts } from './report-parts.ts';

/** Terms with the words that go with them. */
export interface StatedTerms extends TermsWords {
  readonly terms: PuzzleTerms;
}

/** The amendment in the making. */
export interface ShownAmendment extends StatedTerms {
  readonly state: AmendmentRecord['state'];
  readonly note: string;
  readonly claim: AmendmentRecord['claim'];
  readonly failure: string | null;
  readonly progress: ProgressRecord | null;
  readonly report: readonly ReportPart[];
  readonly changed: readonly Change[];
  /** It takes force with the host's reason only: an unclear claim, or a published line that fails. */
  readonly needsReason: boolean;
}

/** Everything the page shows. */
export interface AmendmentView extends DeskPuzzle {
  readonly inForce: StatedTerms;
  readonly amendment: ShownAmendment | null;
  /** What the form begins with; of an amendment that was cancelled, what had been typed. */
  readonly typed: StatedTerms & { readonly note: string };
  readonly answers: number;
}

/** Loads the page; null where the show has no such puzzle, or it is not one that can be amended. */
export async function showAmendment(asked: {
  readonly showId: number;
  readonly puzzleId: number;
  readonly locale: Locale;
}): Promise<AmendmentView | null> {
  const opened = await openDeskPuzzle(asked.showId, asked.puzzleId);
  if (opened === null || !AMENDABLE.includes(opened.state)) return null;
  const { record } = opened;
  const { title, howFar } = record;
  const inForce = { terms: await loadTerms(db(), record), title, howFar };
  const open = await loadOpenAmendment(db(), record.id);
  const cancelled = open === null ? await loadCancelledAmendment(db(), record.id) : null;
  return {
    ...opened,
    inForce,
    amendment: open === null ? null : await tell(record, open, { former: inForce.terms, ...asked }),
    typed: cancelled ?? { ...inForce, note: '' },
    answers: (await countAnswers(db(), record.id)).answers,
  };
}

async function tell(
  record: PuzzleRecord,
  open: AmendmentRecord,
  { former, locale }: { readonly former: PuzzleTerms; readonly locale: Locale },
): Promise<ShownAmendment> {
  const { terms, title, howFar, note, state, claim, failure, engineVersion } = open;
  return {
    ...{ terms, title, howFar, note, state, claim, failure },
    progress: await loadProgress(db(), record.id),
    report: engineVersion === null ? [] : await report(record, { ...open, engineVersion }, locale),
    changed: whatChanged(former, terms),
    needsReason: claim === 'unclear' || countFailingLines(open.report) > 0,
  };
}

async function report(
  record: PuzzleRecord,
  { terms, engineVersion, howFar, report: stored }: AmendmentRecord & { readonly engineVersion: string },
  locale: Locale,
): Promise<ReportPart[]> {
  const version = { engineVersion, budgets: budgetsKey(terms) };
  const { rows } = await loadBookRows(db(), record.id, version);
  return reportParts(stored, terms, { locale, book: createBook(rows), howFar });
}
