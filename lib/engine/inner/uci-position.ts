// Which position does a `position` command put up? The start, or a FEN, and the moves from there.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import type { Uci } from '#lib/rules/move.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import { playUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';

/** A position with what stood before it, as far as it can come again. */
export interface UciPosition {
  /** The last position that a capture or a pawn's move led to, or the one that was given. */
  readonly start: Position;
  /** The moves from there; repetitions among them count (rule V5). */
  readonly moves: readonly Uci[];
  readonly here: Position;
}

/** What was expected where the words could not be read, and the words. */
export interface PositionReason {
  readonly code: 'position';
  readonly expected: string;
  readonly found: string;
}

const START = 'rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1';
/** By the Laws (9.6.2) a game is drawn long before; the kernel remembers 2,048 plies. */
const MOST_QUIET_MOVES = 500;

/** The first position of a game. */
export function startPosition(): UciPosition {
  const parsed = parseFen(START);
  if (!parsed.ok) throw new Error('the first position of a game');
  return { start: parsed.value, moves: [], here: parsed.value };
}

/** Reads the words after `position`. Nothing of a line that cannot be read to its end is used. */
export function parseUciPosition(words: readonly string[]): Result<UciPosition, PositionReason> {
  const at = words.indexOf('moves');
  const place = at < 0 ? words : words.slice(0, at);
  const moves = at < 0 ? [] : words.slice(at + 1);
  if (place[0] === 'startpos' && place.length === 1) return playAll(startPosition().here, moves);
  const [kind, ...fields] = place;
  if (kind !== 'fen') return refused('position startpos or position fen FEN', words.join(' '));
  const fen = fields.join(' ');
  const parsed = parseFen(fen);
  if (!parsed.ok) return refused(`a position that can be played (${parsed.reason.code})`, fen);
  return playAll(parsed.value, moves);
}

function playAll(from: Position, moves: readonly Uci[]): Result<UciPosition, PositionReason> {
  let start = from;
  let here = from;
  let since: Uci[] = [];
  for (const uci of moves) {
    const next = playUci(here, uci);
    if (next === null) return refused(`a legal move in ${writeFen(here)}`, uci);
    here = next;
    since.push(uci);
    if (here.halfmoveClock === 0) {
      start = here;
      since = [];
    }
    if (since.length > MOST_QUIET_MOVES) {
      return refused(`at most ${MOST_QUIET_MOVES} moves without a capture or a pawn's move`, uci);
    }
  }
  return ok({ start, moves: since, here });
}

function refused(expected: string, found: string): Result<never, PositionReason> {
  return refuse({ code: 'position', expected, found });
}
