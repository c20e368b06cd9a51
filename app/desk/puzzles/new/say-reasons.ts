import { squareName } from '#lib/rules/position.ts';
import type { PreviewReason } from '#lib/usecases/puzzles/preview-puzzle.ts';
import type { TypedReason } from '#lib/usecases/puzzles/set-puzzle.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';

type FenReason = Extract<PreviewReason, { code: 'fen' }>['reason'];

/** Why what was typed is no puzzle yet, in a sentence that says what was expected. */
export function sayTypedReason(reason: PreviewReason | TypedReason, locale: Locale): string {
  switch (reason.code) {
    case 'fen':
      return sayFenReason(reason.reason, locale);
    case 'pgn':
      return sayPgnReason(reason.reason, locale);
    case 'game-over':
      return say(locale, 'desk.wrong-game-over', { end: reason.end });
    case 'time':
    case 'time-skipped':
      return say(locale, `desk.wrong-${reason.code}`, { field: reason.field, found: reason.found });
    case 'mate-moves':
    case 'bounds':
      return say(locale, `desk.wrong-${reason.code}`, { least: reason.least, most: reason.most });
    case 'no-such-ply':
    case 'title-too-long':
      return say(locale, `desk.wrong-${reason.code}`, { most: reason.most });
    case 'unknown-puzzle':
      return say(locale, 'desk.refused-unknown-puzzle');
    default:
      return say(locale, `desk.wrong-${reason.code}`);
  }
}

function sayPgnReason(reason: Extract<PreviewReason, { code: 'pgn' }>['reason'], locale: Locale): string {
  switch (reason.code) {
    case 'start':
      return sayFenReason(reason.fen, locale);
    case 'move':
      return say(locale, 'desk.wrong-pgn-move', { ply: reason.ply, line: reason.line });
    case 'not-closed':
      return say(locale, 'desk.wrong-pgn-not-closed', { sign: reason.opened, line: reason.line });
    case 'tag':
      return say(locale, 'desk.wrong-pgn-tag', { found: reason.found, line: reason.line });
    case 'too-long':
      return say(locale, 'desk.wrong-pgn-too-long', { most: reason.limit });
    case 'empty':
      return say(locale, 'desk.wrong-nothing');
  }
}

function sayFenReason(reason: FenReason, locale: Locale): string {
  switch (reason.code) {
    case 'field-count':
      return say(locale, 'desk.wrong-fen-field-count', { found: reason.found });
    case 'field':
      return reason.rank === null
        ? say(locale, 'desk.wrong-fen-field', {
            field: reason.field.replaceAll('-', '_'),
            found: reason.found,
          })
        : say(locale, 'desk.wrong-fen-rank', { rank: reason.rank, found: reason.found });
    case 'position':
      return sayPositionReason(reason.position, locale);
  }
}

function sayPositionReason(
  reason: Extract<FenReason, { code: 'position' }>['position'],
  locale: Locale,
): string {
  switch (reason.code) {
    case 'kings':
    case 'too-many-men':
    case 'too-many-pawns':
      return say(locale, `desk.wrong-position-${reason.code}`, { side: reason.side, count: reason.count });
    case 'pawn-on-last-rank':
    case 'en-passant-square':
      return say(locale, `desk.wrong-position-${reason.code}`, { square: squareName(reason.square) });
    case 'king-can-be-taken':
      return say(locale, 'desk.wrong-position-king-can-be-taken', { side: reason.side });
    case 'castling-right':
      return say(locale, 'desk.wrong-position-castling-right', { letter: reason.letter });
  }
}
