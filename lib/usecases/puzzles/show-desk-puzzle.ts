// The desk page of one puzzle: what was verified, what is asked, what may be done next.

import { explainOpinion, parseOpinion } from '#lib/book/explain-opinion.ts';
import { config } from '#lib/machine/config.ts';
import { nextState, type PuzzleDeed } from '#lib/puzzle/next-state.ts';
import { loadOpenAmendment } from '#lib/store/amendments.ts';
import { countAnswers } from '#lib/store/answers.ts';
import { db } from '#lib/store/client.ts';
import { loadProgress, type ProgressRecord } from '#lib/store/progress.ts';
import { loadTerms, type PuzzleRecord } from '#lib/store/puzzles.ts';
import type { Locale } from '#lib/words/locale.ts';
import { loadBook } from '../answers/loaded-book.ts';
import { countFailingLines } from './failing-lines.ts';
import { type DeskPuzzle, openDeskPuzzle } from './open-desk-puzzle.ts';
import { listOpenRulings, type OpenRuling } from './open-rulings.ts';
import { type ReportPart, reportParts } from './report-parts.ts';

/** Whether a deed may be done now, and the code of what stands against it. */
export type DeedCheck = { readonly may: true } | { readonly may: false; readonly code: string };

/** Everything the page shows. */
export interface DeskPuzzleView extends DeskPuzzle {
  readonly published: readonly string[];
  /** Of the puzzle's own verification; that of an amendment is watched on its page. */
  readonly progress: ProgressRecord | null;
  /** An amendment is in the making (rule A6). */
  readonly isBeingAmended: boolean;
  /** The soundness report in sentences; empty while there is none. */
  readonly report: readonly ReportPart[];
  readonly failingLines: number;
  readonly counts: { readonly answers: number; readonly solvers: number; readonly waiting: number };
  /** Moves still unclear, and how many other groups wait: asked for only while a reveal may come next. */
  readonly rulings: { readonly open: readonly OpenRuling[]; readonly others: number };
  /** Deeds by name; publishing is judged as if a reason were given. */
  readonly deeds: Readonly<Record<PuzzleDeed, DeedCheck>>;
  /** Publishing needs the host's reason: an unclear claim, or a published line that fails. */
  readonly needsReason: boolean;
  /** Address of the public page. */
  readonly address: string;
}

/** Loads the page; null where the show has no such puzzle. */
export async function showDeskPuzzle(asked: {
  readonly showId: number;
  readonly puzzleId: number;
  readonly locale: Locale;
}): Promise<DeskPuzzleView | null> {
  const opened = await openDeskPuzzle(asked.showId, asked.puzzleId);
  if (opened === null) return null;
  const { record } = opened;
  const [progress, terms, counts, amendment] = await Promise.all([
    loadProgress(db(), record.id),
    loadTerms(db(), record),
    countAnswers(db(), record.id),
    loadOpenAmendment(db(), record.id),
  ]);
  const failingLines = countFailingLines(record.report);
  const check = (deed: PuzzleDeed): DeedCheck => {
    const next = nextState({ ...record, failingLines, overrideReason: 'as if' }, deed, record.now);
    return next.ok ? { may: true } : { may: false, code: next.reason.code };
  };
  return {
    ...opened,
    published: terms.published,
    progress: amendment === null ? progress : null,
    isBeingAmended: amendment !== null,
    report: await tellReport(record, asked.locale),
    failingLines,
    counts,
    rulings: check('reveal').may ? await listOpenRulings(db(), record) : { open: [], others: 0 },
    deeds: { publish: check('publish'), close: check('close'), reveal: check('reveal'), void: check('void') },
    needsReason: record.claim === 'unclear' || failingLines > 0,
    address: `${config().publicUrl}/p/${record.slug}`,
  };
}

async function tellReport(record: PuzzleRecord, locale: Locale): Promise<ReportPart[]> {
  const loaded = record.verifiedAt === null ? null : await loadBook(db(), record);
  if (loaded === null) return [];
  const { terms, book } = loaded;
  const parts = reportParts(record.report, terms, { locale, book, howFar: record.howFar });
  const opinion = parseOpinion(record.secondOpinion);
  if (opinion === null) return parts;
  return [...parts, { kind: 'opinion', sentences: explainOpinion(opinion, terms.fen, locale) }];
}

/** The running numbers of a verification; null where the show has no such puzzle or nothing was asked. */
export async function watchVerification(showId: number, puzzleId: number): Promise<ProgressRecord | null> {
  const opened = await openDeskPuzzle(showId, puzzleId);
  return opened === null ? null : loadProgress(db(), opened.record.id);
}
