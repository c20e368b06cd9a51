// The list of doubtful answers: one question, its candidate readings with what each would be marked,
// and what else waits. Nothing is written here.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import type { Outcome } from '#lib/marking/mark.ts';
import { markAnswer } from '#lib/marking/mark-answer.ts';
import { readText } from '#lib/reading/read-text.ts';
import type { Reading, ReadLine, ReadResult } from '#lib/reading/reading.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { type AnswerRecord, findAnswer } from '#lib/store/answers.ts';
import { db } from '#lib/store/client.ts';
import { listDoubtfulGroups } from '#lib/store/doubtful.ts';
import { loadCurrentMark, type MarkRecord } from '#lib/store/marks.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { listWaitingLooks } from '#lib/store/second-looks.ts';
import { type LoadedBook, loadBook } from './loaded-book.ts';

/** What kind of doubt it is; the first word of the group's key. */
export const DOUBT_KINDS = [
  'verdict',
  'unclear',
  'reading',
  'turned',
  'token',
  'text',
  'cut',
  'parked',
  'look',
] as const;
export type DoubtKind = (typeof DOUBT_KINDS)[number];

/** A group in the list. */
export interface WaitingGroup {
  readonly doubt: string;
  readonly kind: DoubtKind;
  readonly answers: number;
  /** What the question is about: the move (UCI), the characters in doubt, or who asks for a second look. */
  readonly subject: string;
}

/** One way to settle the question. */
export interface Candidate {
  /** Names it in the form: `reading d1h1 b5d7`, `verdict holds`, `outcome unfinished`, `turned`. */
  readonly id: string;
  readonly kind: 'reading' | 'turned' | 'holds' | 'slips' | 'outcome' | 'again';
  /** The line, for readings; null for the others. */
  readonly line: ReadLine | null;
  /** What the shown answer would be marked; null where the book does not know yet. */
  readonly outcome: Outcome | null;
  readonly atMove: number | null;
  readonly points: number | null;
}

/** The question that is asked now. */
export interface DoubtfulQuestion extends WaitingGroup {
  readonly answerId: number;
  readonly name: string | null;
  readonly channel: AnswerRecord['channel'];
  readonly at: Date;
  readonly text: string;
  /** The characters that were recognised. */
  readonly recognised: ReadLine;
  readonly candidates: readonly Candidate[];
}

/** The whole page. */
export interface DoubtfulView {
  readonly fen: string;
  readonly waiting: readonly WaitingGroup[];
  readonly question: DoubtfulQuestion | null;
  /** The answer whose second look is asked about now; null where it is a group of answers or nothing. */
  readonly lookAt: number | null;
}

const MOST_CANDIDATES = 9;

/**
 * Shows the group that is asked for, else the largest. The group settled last still stands here until its answers
 * are marked again: it is not asked a second time of its own accord.
 */
export async function showDoubtful(asked: {
  readonly puzzleId: number;
  readonly doubt: string | null;
  readonly settled?: string | null;
}): Promise<Result<DoubtfulView, { readonly code: 'unknown-puzzle' }>> {
  const tx = db();
  const puzzle = await loadPuzzle(tx, { id: asked.puzzleId });
  if (puzzle === null) return refuse({ code: 'unknown-puzzle' });
  const groups = await listDoubtfulGroups(tx, puzzle.id);
  const waiting = groups.map((group): WaitingGroup => {
    const [word = '', ...rest] = group.doubt.split(' ');
    const kind = DOUBT_KINDS.find((one) => one === word) ?? 'text';
    return { doubt: group.doubt, kind, answers: group.answers, subject: subjectOf(kind, rest) };
  });
  // Each look is one person's question: they stand behind the groups, oldest first.
  for (const { answerId, name } of await listWaitingLooks(tx, puzzle.id)) {
    waiting.push({ doubt: `look ${answerId}`, kind: 'look', answers: 1, subject: name ?? '' });
  }
  const current =
    waiting.find((one) => one.doubt === asked.doubt) ?? waiting.find((one) => one.doubt !== asked.settled);
  const { fen } = puzzle.terms;
  if (current?.kind === 'look') {
    return ok({ fen, waiting, question: null, lookAt: Number(current.doubt.split(' ')[1]) });
  }
  const example = groups.find((one) => one.doubt === current?.doubt)?.examples[0];
  const answer = example === undefined ? null : await findAnswer(tx, example);
  const mark = answer === null ? null : await loadCurrentMark(tx, answer.id);
  // The question is asked on the terms that the mark rests on (rule A6).
  const book = await loadBook(tx, puzzle, mark?.revision);
  if (current === undefined || answer === null || mark === null || book === null) {
    return ok({ fen, waiting, question: null, lookAt: null });
  }
  const question = questionFor(current, { answer, mark, book });
  return ok({ fen: book.terms.fen, waiting, question, lookAt: null });
}

function subjectOf(kind: DoubtKind, rest: readonly string[]): string {
  if (kind === 'verdict') return rest[0] ?? '';
  return kind === 'token' ? rest.join(' ') : '';
}

interface Case {
  readonly answer: AnswerRecord;
  readonly mark: MarkRecord;
  readonly book: LoadedBook;
}

function questionFor(group: WaitingGroup, doubt: Case): DoubtfulQuestion {
  const { answer, book } = doubt;
  const position = parseFen(book.terms.fen);
  if (!position.ok) throw new Error(`The stored position cannot be read: ${book.terms.fen}`);
  // What could not be marked may be what cannot be read.
  const read = group.kind === 'parked' ? null : readText({ position: position.value, text: answer.text });
  return {
    ...group,
    answerId: answer.id,
    name: answer.name,
    channel: answer.channel,
    at: answer.statedFrom ?? answer.receivedAt,
    text: answer.text,
    recognised: (group.kind === 'turned' ? read?.turned[0] : read?.readings[0])?.line ?? [],
    candidates: read === null ? PARKED : candidatesFor(group.kind, doubt, read).slice(0, MOST_CANDIDATES),
  };
}

function candidatesFor(kind: DoubtKind, doubt: Case, read: ReadResult): Candidate[] {
  switch (kind) {
    case 'verdict':
      return [ruled(doubt, 'holds'), ruled(doubt, 'slips')];
    case 'turned':
      return [...read.turned.slice(0, 1).map((one) => turned(doubt, one)), asOutcome('impossible', 1)];
    case 'cut':
      return [asOutcome('unfinished', null), asOutcome('solved', null)];
    case 'token':
    case 'text':
      return [asOutcome('unreadable', null), asOutcome('chatter', null)];
    case 'look':
    case 'parked':
      return [];
    case 'reading':
    case 'unclear':
      return distinctReadings(read.readings).map((one) => reading(doubt, one));
  }
}

// What the answer would be marked if the unclear move were ruled so: the walk goes on or ends there.
function ruled({ mark }: Case, verdict: 'holds' | 'slips'): Candidate {
  const slip: Outcome = mark.p === 0 ? 'wrong' : 'slipped';
  const outcome = verdict === 'slips' ? slip : null;
  const atMove = verdict === 'slips' ? mark.p + 1 : null;
  return { id: `verdict ${verdict}`, kind: verdict, line: null, outcome, atMove, points: null };
}

function reading({ answer, book }: Case, one: Reading): Candidate {
  const meant = one.line.map((move) => move.uci);
  const { terms, scheme } = book;
  const result = markAnswer({ terms, scheme, book: book.book, text: answer.text, meant });
  const marked = result.kind === 'mark' ? result.mark : null;
  return {
    id: `reading ${meant.join(' ')}`,
    kind: 'reading',
    line: one.line,
    outcome: marked?.outcome ?? null,
    atMove: marked?.atMove ?? null,
    points: marked?.points ?? null,
  };
}

function turned({ answer, book }: Case, one: Reading): Candidate {
  const meant = one.line.map((move) => move.uci);
  const { terms, scheme } = book;
  const result = markAnswer({ terms, scheme, book: book.book, text: answer.text, meant, isTurned: true });
  const marked = result.kind === 'mark' ? result.mark : null;
  const { outcome = null, atMove = null, points = null } = marked ?? {};
  return { id: 'turned', kind: 'turned', line: one.line, outcome, atMove, points };
}

function asOutcome(outcome: Outcome, atMove: number | null): Candidate {
  return { id: `outcome ${outcome}`, kind: 'outcome', line: null, outcome, atMove, points: null };
}

// Marked again once the cause is gone, or what the host makes of the text.
const PARKED: readonly Candidate[] = [
  { id: 'again', kind: 'again', line: null, outcome: null, atMove: null, points: null },
  ...(['solved', 'unfinished', 'wrong', 'unreadable', 'chatter'] as const).map((one) => asOutcome(one, null)),
];

function distinctReadings(readings: readonly Reading[]): Reading[] {
  const seen = new Map<string, Reading>();
  for (const one of readings) {
    const key = one.line.map((move) => move.uci).join(' ');
    if (key !== '' && !seen.has(key)) seen.set(key, one);
  }
  return [...seen.values()];
}
