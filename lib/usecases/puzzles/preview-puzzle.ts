// What a host pasted, read before anything is stored: a FEN, or a game with a ply to pick, and the
// published lines as the reader understands them.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { readText } from '#lib/reading/read-text.ts';
import type { ReadLine } from '#lib/reading/reading.ts';
import { type FenReason, parseFen } from '#lib/rules/parse-fen.ts';
import { type PgnReason, parsePgn } from '#lib/rules/pgn.ts';
import type { Position } from '#lib/rules/position.ts';
import { writeSan } from '#lib/rules/san.ts';
import { writeFen } from '#lib/rules/write-fen.ts';

/** A place in a game: after so many half-moves, with the move that led there. */
export interface PlyChoice {
  readonly ply: number;
  readonly label: string;
}

/** A published line as typed and as read. */
export interface LinePreview {
  readonly text: string;
  readonly kind: 'answer' | 'unreadable' | 'chatter';
  /** The readings that survive, each the main line. */
  readonly readings: readonly ReadLine[];
  /** Half-moves from 1; null where every move can be played. */
  readonly impossibleAt: number | null;
}

/** What was pasted, read. */
export interface PuzzlePreview {
  readonly fen: string;
  /** Where it stands in the game; null for a FEN. */
  readonly ply: number | null;
  /** The places of the game; empty for a FEN. */
  readonly plies: readonly PlyChoice[];
  readonly lines: readonly LinePreview[];
}

/** Why what was pasted is neither. */
export type PreviewReason =
  | { readonly code: 'nothing' }
  | { readonly code: 'fen'; readonly reason: FenReason }
  | { readonly code: 'pgn'; readonly reason: PgnReason }
  | { readonly code: 'no-such-ply'; readonly most: number };

/** Reads position and lines. `ply` picks the place in a game; null is its end. */
export function previewPuzzle(typed: {
  readonly position: string;
  readonly ply: number | null;
  readonly published: readonly string[];
}): Result<PuzzlePreview, PreviewReason> {
  const text = typed.position.trim();
  if (text === '') return refuse({ code: 'nothing' });
  const place = looksLikeFen(text) ? fromFen(text) : fromPgn(text, typed.ply);
  if (!place.ok) return place;
  const { position, ply, plies } = place.value;
  const lines = typed.published.map((line) => previewLine(position, line));
  return ok({ fen: writeFen(position), ply, plies, lines });
}

interface Place {
  readonly position: Position;
  readonly ply: number | null;
  readonly plies: readonly PlyChoice[];
}

// Eight rows parted by strokes are a position; anything else can only be a game.
function looksLikeFen(text: string): boolean {
  return (text.split(/\s/, 1)[0] ?? '').split('/').length >= 6 && !text.startsWith('[');
}

function fromFen(text: string): Result<Place, PreviewReason> {
  const position = parseFen(text);
  if (!position.ok) return refuse({ code: 'fen', reason: position.reason });
  return ok({ position: position.value, ply: null, plies: [] });
}

function fromPgn(text: string, wanted: number | null): Result<Place, PreviewReason> {
  const game = parsePgn(text);
  if (!game.ok) return refuse({ code: 'pgn', reason: game.reason });
  const { moves, positions } = game.value;
  const ply = wanted ?? moves.length;
  const position = positions[ply];
  if (position === undefined) return refuse({ code: 'no-such-ply', most: moves.length });
  const plies = positions.map((_, index) => {
    const before = positions[index - 1];
    const move = moves[index - 1];
    if (before === undefined || move === undefined) return { ply: 0, label: '' };
    const dots = before.turn === 'w' ? '' : '…';
    return { ply: index, label: `${before.fullmoveNumber}${dots} ${writeSan(before, move)}` };
  });
  return ok({ position, ply, plies });
}

function previewLine(position: Position, text: string): LinePreview {
  const read = readText({ position, text });
  return {
    text,
    kind: read.kind,
    readings: read.readings.map((reading) => reading.line),
    impossibleAt: read.readings[0]?.impossibleAt ?? null,
  };
}
