// What does the soundness report say? Plain sentences in parts, in the host's language and piece letters. Rule V7.

import { exhaustive } from '#lib/kit/exhaustive.ts';
import type { Uci } from '#lib/rules/move.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { movesText } from '#lib/words/move-text.ts';
import { pawns } from './inner/pawns.ts';
import type { PuzzleTerms } from './terms.ts';
import type { ReportedMove, SoundnessReport } from './write-soundness-report.ts';

/** One part of the report; a part without anything to say is left out. */
export interface SoundnessPart {
  readonly kind: 'claim' | 'keys' | 'slower' | 'duals' | 'tries' | 'values' | 'checked';
  readonly sentences: readonly string[];
}

interface Teller {
  readonly report: SoundnessReport;
  readonly terms: PuzzleTerms;
  readonly locale: Locale;
}

const MOST_VALUES = 12;
const MOST_LISTED = 12;
const MOST_LINE = 5;

/** The report in the order in which a host reads it. */
export function explainSoundness(
  report: SoundnessReport,
  terms: PuzzleTerms,
  locale: Locale,
): SoundnessPart[] {
  const teller: Teller = { report, terms, locale };
  const parts: SoundnessPart[] = [
    { kind: 'claim', sentences: claim(teller) },
    { kind: 'keys', sentences: keys(teller) },
    { kind: 'slower', sentences: slower(teller) },
    { kind: 'duals', sentences: duals(teller) },
    { kind: 'tries', sentences: tries(teller) },
    { kind: 'values', sentences: values(teller) },
    { kind: 'checked', sentences: checked(teller) },
  ];
  return parts.filter(({ sentences }) => sentences.length > 0);
}

function claim({ report, terms, locale }: Teller): string[] {
  const { task } = terms;
  const moves = task.kind === 'mate' ? task.moves : 0;
  const open = report.unclear.map((move) => print(terms, locale, [move])).join(', ');
  const sentences: string[] = [];
  switch (report.claim) {
    case 'true':
      sentences.push(say(locale, `book.claim-true-${task.kind}`, { moves }));
      if (report.shorter !== null)
        sentences.push(say(locale, 'book.claim-shorter', { moves: report.shorter }));
      if (open !== '') sentences.push(say(locale, 'book.claim-some-unclear', { moves: open }));
      break;
    case 'false':
      sentences.push(say(locale, `book.claim-false-${task.kind}`, { moves }));
      if (report.trueMate !== null)
        sentences.push(say(locale, 'book.claim-true-task', { moves: report.trueMate }));
      break;
    case 'unclear':
      sentences.push(say(locale, 'book.claim-unclear', { moves: open }));
      break;
    default:
      exhaustive(report.claim);
  }
  if (report.needsEnd) sentences.push(say(locale, 'book.claim-needs-end'));
  return sentences;
}

function keys({ report, terms, locale }: Teller): string[] {
  const [only] = report.keys;
  if (only === undefined) return [];
  const move = told(terms, locale, only);
  if (report.isUnique) return [say(locale, 'book.keys-unique', { move })];
  const moves = list(
    report.keys.map((key) => told(terms, locale, key)),
    locale,
  );
  return [say(locale, 'book.keys-many', { count: report.keys.length, moves })];
}

function slower({ report, terms, locale }: Teller): string[] {
  if (report.slower.length === 0) return [];
  const moves = list(
    report.slower.map(({ move }) => print(terms, locale, [move])),
    locale,
  );
  return [say(locale, 'book.slower', { count: report.slower.length, moves })];
}

function duals({ report, terms, locale }: Teller): string[] {
  return report.duals.map(({ before, published, others }) => {
    const line = print(terms, locale, before);
    const parts = {
      line,
      published: print(terms, locale, [published], before),
      others: list(
        others.map((move) => print(terms, locale, [move], before)),
        locale,
      ),
    };
    return say(locale, line === '' ? 'book.dual-at-start' : 'book.dual', parts);
  });
}

function tries({ report, terms, locale }: Teller): string[] {
  return report.tries.map(({ move, line }) => {
    const text = print(terms, locale, [move]);
    if (line.length === 0) return say(locale, 'book.try-ends', { move: text });
    return say(locale, 'book.try', {
      move: text,
      line: print(terms, locale, line.slice(0, MOST_LINE), [move]),
    });
  });
}

function values({ report, terms, locale }: Teller): string[] {
  const { values } = report;
  if (values === null) return [];
  const row = values.row.slice(0, MOST_VALUES).map((one) => told(terms, locale, one));
  const bounds = { hold: pawns(locale, values.holdBound), slip: pawns(locale, values.slipBound) };
  const sentences = [say(locale, 'book.values-row', { row: row.join(', '), ...bounds })];
  if (values.hasTooMany) sentences.push(say(locale, 'book.values-many', { count: values.holding }));
  if (values.proposedBound !== null) {
    sentences.push(say(locale, 'book.values-propose', { bound: pawns(locale, values.proposedBound) }));
  }
  if (values.simpler.length > 0) {
    const moves = list(
      values.simpler.map((move) => print(terms, locale, [move])),
      locale,
    );
    sentences.push(say(locale, 'book.values-simpler', { moves }));
  }
  return sentences;
}

function checked({ report, locale }: Teller): string[] {
  const { passed, failed, tooLarge, notCheckable } = report.checks;
  const sentences: string[] = [];
  const checkable = passed + failed + tooLarge;
  if (checkable > 0) sentences.push(say(locale, 'book.checks', { passed, checkable }));
  if (tooLarge > 0) sentences.push(say(locale, 'book.checks-too-large', { count: tooLarge }));
  if (failed > 0) sentences.push(say(locale, 'book.checks-failed', { count: failed }));
  if (notCheckable > 0) sentences.push(say(locale, 'book.checks-none', { count: notCheckable }));
  return sentences;
}

function told(terms: PuzzleTerms, locale: Locale, { move, mateIn, value, isExact }: ReportedMove): string {
  const text = print(terms, locale, [move]);
  if (mateIn !== null) return say(locale, 'book.move-mate', { move: text, moves: mateIn });
  if (isExact || value === null) return text;
  return say(locale, 'book.move-value', { move: text, value: pawns(locale, value) });
}

function list(texts: readonly string[], locale: Locale): string {
  const more = texts.length - MOST_LISTED;
  if (more <= 0) return texts.join(', ');
  return say(locale, 'book.and-more', { moves: texts.slice(0, MOST_LISTED).join(', '), more });
}

function print(
  terms: PuzzleTerms,
  locale: Locale,
  moves: readonly Uci[],
  before: readonly Uci[] = [],
): string {
  return movesText(terms.fen, moves, { letters: locale, before });
}
