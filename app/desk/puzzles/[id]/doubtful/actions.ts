'use server';

import { redirect } from 'next/navigation';
import { readText } from '#lib/reading/read-text.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { retryParked } from '#lib/usecases/answers/retry-parked.ts';
import { type Settlement, type SettleReason, settleDoubtful } from '#lib/usecases/answers/settle-doubtful.ts';
import { settleTurned } from '#lib/usecases/answers/settle-turned.ts';
import { type DoubtfulQuestion, showDoubtful } from '#lib/usecases/answers/show-doubtful.ts';
import { undoSettlement } from '#lib/usecases/answers/undo-settlement.ts';
import { openDeskPuzzle } from '#lib/usecases/puzzles/open-desk-puzzle.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { requireDoer } from '../../../../_auth/require-host.ts';
import { puzzleNumber } from '../../../_parts/find-puzzle.ts';
import { type FormState, problemState, textOf } from '../../../_parts/form-state.ts';

/** Settles the question that was shown, by the button or key that was pressed. */
export async function settleAction(_before: FormState, form: FormData): Promise<FormState> {
  const host = await requireDoer('settle-doubtful');
  const { locale } = host;
  const opened = await openDeskPuzzle(host.showId, puzzleNumber(textOf(form, 'puzzle')));
  if (opened === null) return problemState(say(locale, 'desk.refused-unknown-puzzle'), form);
  const puzzleId = opened.record.id;
  const doubt = textOf(form, 'doubt');
  const shown = await showDoubtful({ puzzleId, doubt });
  const { question, fen } = shown.ok ? shown.value : { question: null, fen: '' };
  // Somebody else may have settled it meanwhile: then another question stands there now.
  if (question === null || question.doubt !== doubt || String(question.answerId) !== textOf(form, 'answer')) {
    return problemState(say(locale, 'desk.settle-group-empty'), form);
  }
  const settlement = settlementOf(question, form, fen);
  if (settlement === null) return problemState(say(locale, 'desk.settle-not-read'), form);
  // Carries the answer's number, so that this word can be told from every other and be taken back.
  const why = say(locale, 'desk.settle-why', { answer: question.answerId });
  const word = { puzzleId, memberId: host.id, why };
  if (settlement === 'again') {
    const tried = await retryParked(word);
    if (!tried.ok) return problemState(saySettleReason(tried.reason, locale), form);
    redirect(`/desk/puzzles/${puzzleId}/doubtful`);
  }
  const settled =
    settlement === 'turned' ? await settleTurned(word) : await settleDoubtful({ ...word, doubt, settlement });
  if (!settled.ok) return problemState(saySettleReason(settled.reason, locale), form);
  const last = new URLSearchParams({ said: why, settled: doubt });
  redirect(`/desk/puzzles/${puzzleId}/doubtful?${last}`);
}

/** Takes the last word back. */
export async function undoAction(_before: FormState, form: FormData): Promise<FormState> {
  const host = await requireDoer('settle-doubtful');
  const opened = await openDeskPuzzle(host.showId, puzzleNumber(textOf(form, 'puzzle')));
  if (opened === null) return problemState(say(host.locale, 'desk.refused-unknown-puzzle'), form);
  const undone = await undoSettlement({
    puzzleId: opened.record.id,
    memberId: host.id,
    why: textOf(form, 'why'),
  });
  if (!undone.ok) return problemState(say(host.locale, 'desk.settle-nothing-to-undo'), form);
  redirect(`/desk/puzzles/${opened.record.id}/doubtful`);
}

/** What the pressed button stands for; null where a typed line cannot be read. */
function settlementOf(
  question: DoubtfulQuestion,
  form: FormData,
  fen: string,
): Settlement | 'turned' | 'again' | null {
  const pressed = textOf(form, 'settle');
  if (pressed === 'aside') return { kind: 'outcome', outcome: 'unreadable', points: 0 };
  if (pressed === 'correct' || textOf(form, 'correct').trim() !== '')
    return typedReading(textOf(form, 'correct'), fen);
  const one = question.candidates.find((candidate) => candidate.id === pressed);
  switch (one?.kind) {
    case 'holds':
    case 'slips':
      return { kind: 'verdict', verdict: one.kind };
    case 'turned':
    case 'again':
      return one.kind;
    case 'reading':
      return { kind: 'reading', meant: (one.line ?? []).map((move) => move.uci) };
    case 'outcome':
      return one.outcome === null ? null : { kind: 'outcome', outcome: one.outcome, points: null };
    case undefined:
      return null;
  }
}

function typedReading(text: string, fen: string): Settlement | null {
  const position = parseFen(fen);
  const line = position.ok ? (readText({ position: position.value, text }).readings[0]?.line ?? []) : [];
  return line.length === 0 ? null : { kind: 'reading', meant: line.map((move) => move.uci) };
}

function saySettleReason(reason: SettleReason, locale: Locale): string {
  return reason.code === 'points'
    ? say(locale, 'desk.settle-points', { least: reason.least, most: reason.most })
    : say(locale, `desk.settle-${reason.code}`);
}
