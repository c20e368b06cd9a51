// Why this mark? The sentences that a viewer reads on the receipt and a host on air, in the reader's language and
// piece letters. Rules A1 and O0; written anew each time from the reason's code and parameters.

import { movesLeftAtStart } from '#lib/book/claim.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import type { Uci } from '#lib/rules/move.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { otherSide, type Side } from '#lib/rules/position.ts';
import { positionEnd } from '#lib/rules/position-end.ts';
import { playUci } from '#lib/rules/uci.ts';
import type { MessageKey } from '#lib/words/catalogue/catalogue.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { type Letters, movesText } from '#lib/words/move-text.ts';
import type { Mark } from './mark.ts';

/** What of a mark its explanation needs; stored marks have it too. */
export interface MarkToExplain extends Pick<Mark, 'outcome' | 'atMove' | 'p' | 'r' | 'line' | 'reason'> {
  readonly flags: readonly string[];
}

interface Teller {
  readonly mark: MarkToExplain;
  readonly terms: PuzzleTerms;
  readonly locale: Locale;
  readonly letters: Letters;
  readonly defender: Side;
}

/** Flags that are told in a sentence of their own, in this order. */
const TOLD = [
  'other-way',
  'found-both',
  'still-winning',
  'past-the-end',
  'typo',
  'generous',
  'cut-by-source',
  'benefit-of-doubt',
] as const;

/**
 * One to seven sentences; none where a person said otherwise: what the program found is told from its own
 * mark. `letters` sets other piece letters than the language's own, such as figurines.
 */
export function explainMark(
  mark: MarkToExplain,
  terms: PuzzleTerms,
  locale: Locale,
  { letters = locale }: { readonly letters?: Letters } = {},
): string {
  if (mark.reason.code === 'overruled') return '';
  const start = parseFen(terms.fen);
  if (!start.ok) throw new Error(`not a position: ${terms.fen}`);
  const teller: Teller = { mark, terms, locale, letters, defender: otherSide(start.value.turn) };
  const sentences = [
    ...worseOfTwo(teller),
    ...goodBefore(teller),
    ...slowerBefore(teller),
    ...why(teller),
    ...flagSentences(teller),
  ];
  return sentences.join(' ');
}

function why(teller: Teller): string[] {
  const { mark, locale } = teller;
  const at = mark.atMove ?? 1;
  switch (mark.reason.code) {
    case 'slower': {
      const move = lineMove(teller, 2 * (Math.max(1, number(teller, 'at')) - 1));
      const [mateOn, asked] = [number(teller, 'mateOn'), number(teller, 'asked')];
      return [say(locale, 'marking.why-slower', { move, mateOn, asked })];
    }
    case 'unfinished':
      return unfinished(teller);
    case 'slower-not-shown':
      return slowerNotShown(teller);
    case 'weak-defence':
      return weakReply(teller, 'marking.why-weak-defence');
    case 'slip':
      return slip(teller);
    case 'impossible':
      return [quoted(teller, 'marking.why-impossible', 'marking.why-impossible-no-text', { at })];
    case 'unclear-verdict':
      return [say(locale, 'marking.why-unclear-verdict', { move: lineMove(teller, lastSolverPly(teller)) })];
    case 'two-readings': {
      const key = mark.outcome === 'unclear' ? 'marking.why-two-readings-host' : 'marking.why-two-readings';
      return [say(locale, key, { moves: apart(teller) })];
    }
    case 'unreadable':
      return [quoted(teller, 'marking.why-unreadable', 'marking.why-unreadable-no-text', {})];
    case 'solved':
    case 'not-verified':
    case 'too-many-fillings':
    case 'board-turned':
    case 'parked':
    case 'chatter':
      return [say(locale, `marking.why-${mark.reason.code}`)];
    default:
      // A reason of an older or newer program: the outcome says what it can.
      return [say(locale, `marking.outcome-${mark.outcome}`, { move: at })];
  }
}

function goodBefore({ mark, locale }: Teller): string[] {
  const isTold =
    mark.outcome === 'slipped' || mark.outcome === 'impossible' || mark.reason.code === 'slower-not-shown';
  // The move that lets a position come for the third time keeps its place in p (rule P3) and is not right.
  const count = mark.outcome === 'slipped' ? Math.min(mark.p, (mark.atMove ?? 1) - 1) : mark.p;
  return isTold && count > 0 ? [say(locale, 'marking.why-good-before', { count })] : [];
}

// Of two moves for one place the worse counts: without this nobody would see why the better one did not.
function worseOfTwo({ mark, locale }: Teller): string[] {
  return mark.reason.params.choice === 'worse' ? [say(locale, 'marking.why-worse-of-two')] : [];
}

/** The slower move on the way to a slip or to a move that cannot be played. */
function slowerBefore(teller: Teller): string[] {
  const { mark, locale } = teller;
  const at = mark.reason.params.slowerAt;
  if (typeof at !== 'number' || at >= (mark.atMove ?? 0)) return [];
  const move = lineMove(teller, 2 * (at - 1));
  return [say(locale, 'marking.why-slower-before', { move, mateOn: number(teller, 'mateOn') })];
}

function slowerNotShown(teller: Teller): string[] {
  const { mark, locale } = teller;
  const move = lineMove(teller, 2 * (number(teller, 'at') - 1));
  const mateOn = number(teller, 'mateOn');
  if (typeof mark.reason.params.weakAt !== 'number') {
    return [say(locale, 'marking.why-slower-not-shown', { move, mateOn })];
  }
  return [
    say(locale, 'marking.why-slower-before', { move, mateOn }),
    ...weakReply(teller, 'marking.why-weak-reply'),
  ];
}

function unfinished(teller: Teller): string[] {
  const { mark, locale } = teller;
  const rest = moves(teller, 'rest');
  const sentences = [say(locale, 'marking.why-unfinished')];
  const missing = number(teller, 'missing');
  if (missing > 0) sentences.push(say(locale, 'marking.why-missing', { missing }));
  if (rest.length > 0)
    sentences.push(say(locale, 'marking.why-goes-on', { line: print(teller, mark.line ?? [], rest) }));
  return sentences;
}

function weakReply(teller: Teller, key: MessageKey): string[] {
  const { mark, locale } = teller;
  // The walk ended with the weak reply; what is shown behind it does not count.
  const ply = 2 * countedMoves(teller) - 1;
  const sentences = [say(locale, key, { reply: lineMove(teller, ply) })];
  const [better] = moves(teller, 'better');
  if (better !== undefined) {
    const reply = print(teller, (mark.line ?? []).slice(0, ply), [better]);
    sentences.push(say(locale, 'marking.why-better-defence', { reply }));
  }
  return sentences;
}

function slip(teller: Teller): string[] {
  const { mark, terms, locale, defender } = teller;
  const at = mark.atMove ?? 1;
  const before = (mark.line ?? []).slice(0, 2 * at - 1);
  const move = lineMove(teller, 2 * at - 2);
  const by = moves(teller, 'by');
  const how = mark.reason.params.how;
  const sentences: string[] = [];
  if (how === 'stalemate' || how === 'draw' || how === 'repetition') {
    const isByReply = by.length === 1;
    const ending = isByReply ? print(teller, before.slice(0, -1), [before.at(-1) ?? '', ...by]) : move;
    const key = isByReply && how === 'stalemate' ? 'draw' : how;
    sentences.push(say(locale, `marking.why-slip-${key}`, { move: ending }));
  } else if (by.length === 0) {
    const isLate = movesLeftAtStart(terms) !== null && number(teller, 'movesLeft') < 1;
    sentences.push(say(locale, isLate ? 'marking.why-slip-too-late' : 'marking.why-slip-known', { move }));
  } else {
    const reply = print(teller, before, by.slice(0, 1));
    const left = number(teller, 'movesLeft');
    const end = endAfter(teller, [...before, ...by]);
    const known = how === 'no-win' || how === 'no-draw' ? how : 'no-mate';
    const key = by.length === 1 && end === 'checkmate' ? 'mated' : known;
    sentences.push(say(locale, `marking.why-slip-${key}`, { move, side: defender, reply, left }));
    if (by.length > 1) {
      const told = end === 'stalemate' ? 'marking.why-defence-line-stalemate' : 'marking.why-defence-line';
      sentences.push(say(locale, told, { line: print(teller, before, by) }));
    }
  }
  const better = moves(teller, 'better');
  if (better.length > 0) {
    const list = better.map((uci) => print(teller, before.slice(0, -1), [uci])).join(', ');
    sentences.push(say(locale, 'marking.why-better-move', { count: better.length, moves: list }));
  }
  return sentences;
}

function endAfter({ terms }: Teller, moves: readonly Uci[]): ReturnType<typeof positionEnd> {
  const start = parseFen(terms.fen);
  let position = start.ok ? start.value : null;
  for (const uci of moves) position = position === null ? null : playUci(position, uci);
  return position === null ? null : positionEnd(position);
}

function flagSentences({ mark, locale }: Teller): string[] {
  const isRight = mark.outcome === 'solved' || mark.outcome === 'unfinished';
  return TOLD.filter((flag) => mark.flags.includes(flag) && (flag !== 'other-way' || isRight)).map((flag) =>
    say(locale, `marking.and-${flag}`),
  );
}

function quoted(
  teller: Teller,
  key: MessageKey,
  without: MessageKey,
  params: Readonly<Record<string, number>>,
): string {
  const { text } = teller.mark.reason.params;
  const hasText = typeof text === 'string' && text !== '';
  return hasText ? say(teller.locale, key, { ...params, text }) : say(teller.locale, without, params);
}

/** Solver moves that were walked before a weak reply: those that hold, and the slower ones after them. */
function countedMoves({ mark }: Teller): number {
  const { at, weakAt } = mark.reason.params;
  if (typeof weakAt === 'number') return weakAt;
  return typeof at === 'number' ? at : Math.max(1, mark.p);
}

function lastSolverPly({ mark }: Teller): number {
  const length = mark.line?.length ?? 0;
  return length % 2 === 1 ? length - 1 : Math.max(0, length - 2);
}

function apart(teller: Teller): string {
  const before = teller.mark.line ?? [];
  const printed = moves(teller, 'moves').map((uci) => print(teller, before, [uci]) || uci);
  return printed.join(', ');
}

function lineMove(teller: Teller, ply: number): string {
  const line = teller.mark.line ?? [];
  return print(teller, line.slice(0, ply), line.slice(ply, ply + 1));
}

function print({ terms, letters }: Teller, before: readonly Uci[], line: readonly Uci[]): string {
  return movesText(terms.fen, line, { letters, before });
}

function number({ mark }: Teller, name: string): number {
  const value = mark.reason.params[name];
  return typeof value === 'number' ? value : 0;
}

function moves({ mark }: Teller, name: string): readonly Uci[] {
  const value = mark.reason.params[name];
  return value !== null && typeof value === 'object' ? value : [];
}
