// How the main line of a PGN game becomes moves and positions. Comments, variations and glyphs are
// passed over; only the first game of a text is read.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { tokenisePgn } from './inner/pgn-tokens.ts';
import type { Move } from './move.ts';
import { type FenReason, parseFen } from './parse-fen.ts';
import { playMove } from './play-move.ts';
import type { Position } from './position.ts';
import { parseSan, type SanReason } from './san.ts';

/** A game: its tags, where it starts, its moves, and the positions from the start on (one more than moves). */
export interface PgnGame {
  readonly tags: ReadonlyMap<string, string>;
  readonly start: Position;
  readonly moves: readonly Move[];
  readonly positions: readonly Position[];
}

/** Why a text is no game, with the line (from 1) where it goes wrong. */
export type PgnReason =
  | { readonly code: 'too-long'; readonly limit: number }
  | { readonly code: 'empty' }
  /** A comment, variation or tag that is never closed. */
  | { readonly code: 'not-closed'; readonly opened: '{' | '(' | '['; readonly line: number }
  | { readonly code: 'tag'; readonly found: string; readonly line: number }
  /** The start position that the FEN tag states. */
  | { readonly code: 'start'; readonly fen: FenReason }
  /** `ply` counts half-moves from 1. */
  | { readonly code: 'move'; readonly ply: number; readonly line: number; readonly san: SanReason };

/** The longest text that is looked at, in characters. */
const LIMIT = 200_000;

const START = 'rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1';

/**
 * The first game of a text in the import format of the PGN standard (1994). The FEN tag sets the start,
 * with or without `SetUp`. A text of bare moves is a game without tags; tags alone are a game without moves.
 */
export function parsePgn(text: string): Result<PgnGame, PgnReason> {
  if (text.length > LIMIT) return refuse({ code: 'too-long', limit: LIMIT });
  const read = tokenisePgn(text);
  if (!read.ok) return read;
  const { tags, moves: written } = read.value;
  if (tags.size === 0 && written.length === 0) return refuse({ code: 'empty' });
  const start = parseFen(tags.get('FEN') ?? START);
  if (!start.ok) return refuse({ code: 'start', fen: start.reason });
  const moves: Move[] = [];
  const positions: Position[] = [start.value];
  let position = start.value;
  for (const { text: san, line } of written) {
    const move = parseSan(position, san);
    if (!move.ok) return refuse({ code: 'move', ply: moves.length + 1, line, san: move.reason });
    position = playMove(position, move.value);
    moves.push(move.value);
    positions.push(position);
  }
  return ok({ tags, start: start.value, moves, positions });
}
