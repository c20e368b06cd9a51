// The stored soundness report as sentences in parts: what the book says, the published lines under
// their own marking with what would mend them (rule V9), and how far viewers are asked to write.

import { explainSoundness, type SoundnessPart } from '#lib/book/explain-soundness.ts';
import type { SolutionBook } from '#lib/book/solution-book.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { howFarSentence } from '#lib/marking/how-far.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import type { MarkedLine, StoredReport } from './soundness.ts';

/** One part of the report. */
export interface ReportPart {
  readonly kind: SoundnessPart['kind'] | 'published' | 'length' | 'opinion';
  readonly sentences: readonly string[];
}

/** The stored report in a language; empty where none was stored or its version is unknown. */
export function reportParts(
  stored: unknown,
  terms: PuzzleTerms,
  told: { readonly locale: Locale; readonly book: SolutionBook; readonly howFar: string | null },
): ReportPart[] {
  const report = parseStoredReport(stored);
  if (report === null) return [];
  const { locale, book, howFar } = told;
  const lines = report.publishedLines.map((line) => lineSentence(line, locale));
  const published: ReportPart[] = lines.length === 0 ? [] : [{ kind: 'published', sentences: lines }];
  const length: ReportPart = { kind: 'length', sentences: [howFar ?? howFarSentence(terms, book, locale)] };
  return [...explainSoundness(report.soundness, terms, locale), ...published, length];
}

/** The stored data as a report; it was written by this program, so its version alone is looked at. */
export function parseStoredReport(stored: unknown): StoredReport | null {
  if (typeof stored !== 'object' || stored === null || Reflect.get(stored, 'v') !== 1) return null;
  return stored as StoredReport;
}

function lineSentence(line: MarkedLine, locale: Locale): string {
  const text = line.text.length > 120 ? `${line.text.slice(0, 120)}…` : line.text;
  if (line.outcome === 'solved') return say(locale, 'desk.line-solved', { text });
  const outcome = say(locale, `marking.outcome-${line.outcome}`, { move: line.atMove ?? 1 });
  return say(locale, `desk.line-${offerFor(line)}`, { text, outcome, p: line.p, r: line.r });
}

function offerFor(line: MarkedLine): 'add-moves' | 'change-task' | 'correct' | 'unclear' {
  switch (line.outcome) {
    case 'unfinished':
      return 'add-moves';
    case 'slower':
    case 'slipped':
    case 'wrong':
      return 'change-task';
    case 'unclear':
      return 'unclear';
    default:
      return 'correct';
  }
}
