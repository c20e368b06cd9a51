// Why a FEN, a PGN or a move in notation was not taken, as a sentence that says what was expected.

import { exhaustive } from '#lib/kit/exhaustive.ts';
import type { PositionReason } from '#lib/rules/check-position.ts';
import type { FenReason } from '#lib/rules/parse-fen.ts';
import type { PgnReason } from '#lib/rules/pgn.ts';
import { squareName } from '#lib/rules/position.ts';
import type { SanReason } from '#lib/rules/san.ts';
import { say } from './format.ts';
import type { Locale } from './locale.ts';

/** Why a FEN was refused: the field, what was expected, what was found. */
export function fenSentence(reason: FenReason, locale: Locale): string {
  switch (reason.code) {
    case 'field-count':
      return say(locale, 'rules.field-count', { found: reason.found });
    case 'field': {
      const { field, found, rank } = reason;
      if (rank !== null) return say(locale, 'rules.field-rank', { found, rank });
      return say(locale, `rules.field-${field}`, { found });
    }
    case 'position':
      return positionSentence(reason.position, locale);
    default:
      return exhaustive(reason);
  }
}

/** Why a position cannot be played. */
export function positionSentence(reason: PositionReason, locale: Locale): string {
  switch (reason.code) {
    case 'kings':
    case 'too-many-men':
    case 'too-many-pawns':
      return say(locale, `rules.${reason.code}`, { side: reason.side, count: reason.count });
    case 'pawn-on-last-rank':
    case 'en-passant-square':
      return say(locale, `rules.${reason.code}`, { square: squareName(reason.square) });
    case 'king-can-be-taken': {
      const squares = reason.checkers.map(squareName).join(', ');
      return say(locale, 'rules.king-can-be-taken', { side: reason.side, squares });
    }
    case 'castling-right':
      return say(locale, 'rules.castling-right', { letter: reason.letter });
    default:
      return exhaustive(reason);
  }
}

/** Why a move in notation was refused. */
export function sanSentence(reason: SanReason, locale: Locale): string {
  switch (reason.code) {
    case 'not-san':
    case 'not-legal':
      return say(locale, `rules.${reason.code}`, { text: reason.text });
    case 'ambiguous':
      return say(locale, 'rules.ambiguous', { text: reason.text, candidates: reason.candidates.join(', ') });
    default:
      return exhaustive(reason);
  }
}

/** Why a game was refused, with the line of the text. */
export function pgnSentence(reason: PgnReason, locale: Locale): string {
  switch (reason.code) {
    case 'too-long':
      return say(locale, 'rules.game-too-long', { limit: reason.limit });
    case 'empty':
      return say(locale, 'rules.game-empty');
    case 'not-closed':
      return say(locale, 'rules.game-not-closed', { line: reason.line, opened: reason.opened });
    case 'tag':
      return say(locale, 'rules.game-tag', { line: reason.line, found: reason.found });
    case 'start':
      return say(locale, 'rules.game-start', { why: fenSentence(reason.fen, locale) });
    case 'move': {
      const why = sanSentence(reason.san, locale);
      return say(locale, 'rules.game-move', { line: reason.line, ply: reason.ply, why });
    }
    default:
      return exhaustive(reason);
  }
}
