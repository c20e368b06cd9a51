// One second look as a question to the host (rule A2): what the viewer says beside text, reading, mark
// and explanation, and what each other outcome would earn.

import type { Outcome } from '#lib/marking/mark.ts';
import { db } from '#lib/store/client.ts';
import { loadPuzzle, loadPuzzleScheme } from '#lib/store/puzzles.ts';
import type { SecondLookRecord } from '#lib/store/second-looks.ts';
import type { Locale } from '#lib/words/locale.ts';
import { pointsByHand } from './overrule-mark.ts';
import { type DeskMark, showMark } from './show-mark.ts';

/** Another outcome that the mark can be changed to. */
export interface LookChoice {
  readonly outcome: Outcome;
  readonly points: number;
}

/** The question. */
export interface LookQuestion {
  readonly shown: DeskMark;
  readonly look: SecondLookRecord;
  /** Best first; the outcome in force and those that ask for a person are left out. */
  readonly choices: readonly LookChoice[];
}

const CHOICES: readonly Outcome[] = [
  'solved',
  'slower',
  'unfinished',
  'slipped',
  'wrong',
  'impossible',
  'unreadable',
  'chatter',
];

/** The look of an answer that waits; null where none waits there. */
export async function showLook(asked: {
  readonly puzzleId: number;
  readonly answerId: number;
  readonly locale: Locale;
}): Promise<LookQuestion | null> {
  const shown = await showMark(asked);
  const puzzle = await loadPuzzle(db(), { id: asked.puzzleId });
  if (shown === null || puzzle === null || shown.answer.withdrawnAt !== null) return null;
  const { look, mark } = shown;
  if (look === null || look.settledAt !== null || mark === null) return null;
  const { task } = puzzle.terms;
  const scheme = await loadPuzzleScheme(db(), puzzle);
  const others = CHOICES.filter((one) => one !== mark.outcome && (one !== 'slower' || task.kind === 'mate'));
  const choices = others.map((outcome) => ({
    outcome,
    points: pointsByHand(mark, outcome, scheme),
  }));
  return { shown, look, choices };
}
