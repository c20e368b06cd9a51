// What the book says of a first move, as a sentence: the answer to *Why not?*.

import type { PublicPuzzle } from '#lib/puzzle/public-puzzle.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import { findUci } from '#lib/rules/uci.ts';
import type { FirstMove } from '#lib/usecases/puzzles/first-moves.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { moveNumber, shortMove } from './board/answer-line.ts';
import { lettersOf } from './piece-letters.ts';
import { stepAt } from './solution-steps.ts';

/** A first move in short notation. */
export function firstMoveText(start: Position, uci: string, locale: Locale): string {
  const move = findUci(start, uci);
  return move === null ? uci : shortMove(start, move, lettersOf(locale));
}

/** The reply that defeats a first move, numbered: "1 … Nd8"; null where there is none. */
export function replyText(start: Position, first: FirstMove, locale: Locale): string | null {
  if (first.reply === null) return null;
  const after = stepAt(start, [first.move], 1).position;
  const move = findUci(after, first.reply);
  if (move === null) return null;
  const dots = start.turn === 'w' ? `${moveNumber(start, 1)} … ` : `${moveNumber(start, 1)} `;
  return dots + shortMove(after, move, lettersOf(locale));
}

/** One sentence on a first move; the same for all readers, whoever asks. */
export function firstMoveSentence(puzzle: PublicPuzzle, first: FirstMove, locale: Locale): string {
  const start = parseFen(puzzle.fen);
  if (!start.ok) throw new Error(`not a position: ${puzzle.fen}`);
  const move = firstMoveText(start.value, first.move, locale);
  const reply = replyText(start.value, first, locale);
  const task = puzzle.task.kind;
  if (first.isBenefit) return say(locale, 'pages.why-benefit', { move });
  switch (first.verdict) {
    case 'holds':
      return first.mateIn === null
        ? say(locale, 'pages.why-holds', { move, task })
        : say(locale, 'pages.why-holds-mate', { move, moves: first.mateIn });
    case 'slower':
      return say(locale, 'pages.why-slower', { move, moves: first.mateIn ?? 0 });
    case 'slips':
      return reply === null
        ? say(locale, 'pages.why-slips-at-once', { move })
        : say(locale, 'pages.why-slips', { move, reply, task });
    case 'unclear':
      return say(locale, 'pages.why-unclear', { move });
    case 'unknown':
      return say(locale, 'pages.why-unknown', { move });
  }
}
