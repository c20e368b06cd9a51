// How is an answer marked? The whole of rules O0 to O4 over all readings of a text. A marker keeps what the answers
// of one puzzle share; what it answers depends on terms, book, scheme and text alone (rule A4).

import type { Lacking } from '#lib/book/book-row.ts';
import { createTree, movesTo } from '#lib/book/position-tree.ts';
import { readPublishedLines } from '#lib/book/published-lines.ts';
import type { SolutionBook } from '#lib/book/solution-book.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { readText } from '#lib/reading/read-text.ts';
import type { Reading, ReadLine, ReadResult } from '#lib/reading/reading.ts';
import type { Uci } from '#lib/rules/move.ts';
import { goBeyond } from './inner/beyond-the-end.ts';
import { flagsOf } from './inner/flags-of.ts';
import { judgeReading } from './inner/judge-reading.ts';
import { createFacts } from './inner/puzzle-facts.ts';
import { quote, reasonOf } from './inner/reason-of.ts';
import { type Settled, settleReadings } from './inner/settle-readings.ts';
import type { PuzzleFacts, WalkContext } from './inner/walk-context.ts';
import type { Mark, Outcome } from './mark.ts';
import type { Reason } from './reasons.ts';
import { pointsFor, SCHEMES, type Scheme } from './schemes.ts';

/** Positions that one answer may ask for, along its main line (mechanics). */
export const MOST_ASKED = 40;

/** An answer to be marked. */
export interface AnswerToMark {
  readonly text: string;
  /** The line that the viewer chose when asked (rule R8), or that the host ruled was meant; null where left open. */
  readonly meant?: readonly Uci[] | null;
  /** The text as read already; it is read here otherwise. */
  readonly read?: ReadResult;
  /** Positions that the answer may still ask for; with 0 what the book lacks counts as unclear. */
  readonly mayAsk?: number;
  /** The host's ruling on texts whose board is turned (rule R14); null while there is none. */
  readonly isTurned?: boolean | null;
}

/** A mark, or the verdicts that it waits for: to be verified, added to the book, and marked again. */
export type MarkResult =
  | { readonly kind: 'mark'; readonly mark: Mark }
  | { readonly kind: 'lacking'; readonly lacking: readonly Lacking[] };

export type Marker = (answer: AnswerToMark) => MarkResult;

/** A marker for one puzzle. The book may grow under it. */
export function createMarker(input: {
  readonly terms: PuzzleTerms;
  readonly book: SolutionBook;
  /** The preset of the terms where left out. */
  readonly scheme?: Scheme;
}): Marker {
  const { terms, book } = input;
  const tree = createTree(terms.fen);
  const published = readPublishedLines(terms, tree);
  const scheme = input.scheme ?? SCHEMES[terms.scheme];
  let facts = createFacts({ terms, book, tree, published, scheme });
  let size = book.size;
  return (answer) => {
    if (book.size !== size) {
      size = book.size;
      facts = createFacts({ terms, book, tree, published, scheme });
    }
    const read = answer.read ?? readText({ position: tree.root.position, text: answer.text });
    return markRead(facts, answer, read);
  };
}

function markRead(facts: PuzzleFacts, answer: AnswerToMark, read: ReadResult): MarkResult {
  const readings = readingsToJudge(answer, read);
  if (readings.length === 0) return { kind: 'mark', mark: markWithoutReading(facts, answer, read) };
  const allowance = {
    fillings: 0,
    lacking: new Map<string, Lacking>(),
    positions: new Set<string>(),
    mayAsk: answer.mayAsk ?? MOST_ASKED,
  };
  const context: WalkContext = { facts, allowance, isAsking: true };
  const judged = pickMeant(readings, answer.meant ?? null).map((reading) => judgeReading(context, reading));
  const whole = judged.filter((one) => one !== null);
  if (whole.length < judged.length) return { kind: 'lacking', lacking: [...allowance.lacking.values()] };
  const settled = settleReadings(context, whole);
  const mark =
    settled.kind === 'one'
      ? markOne(context, settled, { read, text: answer.text })
      : markUnsettled(context, settled, read);
  return { kind: 'mark', mark };
}

// Rule R14: texts written from the other side of the board count once the host has said so, of all or of this
// one. Until then such a text has no reading: that no move of it is legal as written is the reason to ask.
function readingsToJudge(
  { isTurned, meant }: AnswerToMark,
  { readings, turned }: ReadResult,
): readonly Reading[] {
  const isMaybeTurned = turned.length > 0 && readings.every(({ line }) => line.length === 0);
  if (!isMaybeTurned || isTurned === false) return readings;
  if (isTurned === true) return turned;
  return meant === undefined || meant === null ? [] : turned.filter(({ line }) => isLine(line, meant));
}

function isLine(line: ReadLine, moves: readonly Uci[]): boolean {
  return line.length === moves.length && line.every(({ uci }, at) => uci === moves[at]);
}

// A chosen line that no reading has is left out of account: the text is the fact.
function pickMeant(readings: readonly Reading[], meant: readonly Uci[] | null): readonly Reading[] {
  if (meant === null) return readings;
  const chosen = readings.filter(({ line }) => isLine(line, meant));
  return chosen.length > 0 ? chosen : readings;
}

function markOne(
  context: WalkContext,
  { judged, isGenerous }: Extract<Settled, { kind: 'one' }>,
  { read, text }: { readonly read: ReadResult; readonly text: string },
): Mark {
  const { facts } = context;
  const { walk, line, outcome, points, p, r, atMove } = judged;
  const beyond = goBeyond(context, line, walk);
  return {
    ...frame(facts, read),
    outcome,
    flags: flagsOf(facts, judged, { read, beyond, isGenerous }),
    points,
    p,
    r,
    atMove,
    line: [...movesTo(walk.node), ...beyond.moves],
    reading: line.line.slice(0, beyond.used),
    verdicts: [...walk.verdicts, ...beyond.verdicts],
    reason: toReason(reasonOf(facts, judged, text), judged.isWorseOfTwo),
  };
}

function markUnsettled(
  context: WalkContext,
  { kind, judged, p, common }: Extract<Settled, { kind: 'ambiguous' | 'host' }>,
  read: ReadResult,
): Mark {
  const { facts } = context;
  const outcome: Outcome = kind === 'ambiguous' ? 'ambiguous' : 'unclear';
  const shared = judged.walk.verdicts.slice(0, p);
  const moves = movesTo(judged.walk.node).slice(0, Math.max(0, 2 * p - 1));
  const r = Math.max(facts.needed(shared[0] ?? null, moves), p + 1);
  const apart = judged.reading.line[common.length];
  const others = read.readings.flatMap(({ line }) => line[common.length]?.uci ?? []);
  const parting = [...new Set(apart === undefined ? others : [apart.uci, ...others])].sort();
  return {
    ...frame(facts, read),
    outcome,
    flags: read.isCutBySource ? ['cut-by-source'] : [],
    points: pointsFor(facts.scheme, { outcome, p, r, first: shared[0]?.verdict ?? null }),
    p,
    r,
    atMove: null,
    line: moves,
    reading: common,
    verdicts: shared,
    reason: toReason({ code: 'two-readings', params: { moves: parting } }),
  };
}

function markWithoutReading(facts: PuzzleFacts, { text, isTurned }: AnswerToMark, read: ReadResult): Mark {
  const isChatter = read.kind === 'chatter';
  const isTurnDoubt = !isChatter && read.turned.length > 0 && (isTurned ?? null) === null;
  const reason: Reason = isChatter
    ? { code: 'chatter', params: {} }
    : isTurnDoubt
      ? { code: 'board-turned', params: {} }
      : { code: 'unreadable', params: { text: quote(text, read.firstUnread) } };
  return {
    ...frame(facts, read),
    outcome: isChatter ? 'chatter' : 'unreadable',
    flags: read.isCutBySource ? ['cut-by-source'] : [],
    points: 0,
    p: 0,
    r: facts.needed(null, []),
    atMove: null,
    line: null,
    reading: null,
    verdicts: [],
    reason: toReason(reason),
  };
}

function frame(facts: PuzzleFacts, read: ReadResult) {
  const { scheme, book } = facts;
  return {
    scheme: scheme.name,
    schemeVersion: scheme.version,
    readerVersion: read.readerVersion,
    engineVersion: book.version === '' ? null : book.version,
  };
}

// A mark stores its reason as code and parameters of any kind, so that old marks outlive new codes.
function toReason(reason: Reason, isWorseOfTwo = false): Mark['reason'] {
  return isWorseOfTwo ? { ...reason, params: { ...reason.params, choice: 'worse' } } : reason;
}
