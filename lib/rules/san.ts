// Moves in standard algebraic notation: the PGN standard's export form is written; its import forms and
// those of FIDE Laws, Appendix C, are parsed. English letters only; other languages are the reader's.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { isCheck } from './attacks.ts';
import { legalMoves } from './legal-moves.ts';
import type { Move, Uci } from './move.ts';
import { playMove } from './play-move.ts';
import { type Kind, type Position, squareName } from './position.ts';
import { writeUci } from './uci.ts';

/** Why a text gives no move: it has no such form, no legal move fits, or several do. */
export type SanReason =
  | { readonly code: 'not-san'; readonly text: string }
  | { readonly code: 'not-legal'; readonly text: string }
  | { readonly code: 'ambiguous'; readonly text: string; readonly candidates: readonly Uci[] };

const LETTERS: Readonly<Record<Kind, string>> = { p: '', n: 'N', b: 'B', r: 'R', q: 'Q', k: 'K' };
const SHAPE = /^([KQRBN]?)([a-h]?)([1-8]?)[x:-]?([a-h][1-8])(?:=?([QRBN])|\(([QRBN])\))?$/;
const NUMBER = /^\d+(?:\s*\.+\s*|\s+)/;
const MARKS = /(?:\s*e\.?p\.?)?(?:\+\+|[+#])?(?:[!?]{1,2})?$/;

/**
 * The export form of a legal move: `Nbd7`, `exd6`, `e8=Q+`, `O-O-O#`. Only legal moves count as rivals, so
 * beside a pinned knight none is named (PGN 8.2.3.4); file before rank before both.
 */
export function writeSan(position: Position, move: Move): string {
  const after = playMove(position, move);
  const suffix = !isCheck(after) ? '' : legalMoves(after).length === 0 ? '#' : '+';
  if (move.castle !== null) return (move.castle === 'short' ? 'O-O' : 'O-O-O') + suffix;
  const to = squareName(move.to);
  const takes = move.captured === null ? '' : 'x';
  if (move.kind === 'p') {
    const start = takes === '' ? '' : squareName(move.from).charAt(0) + takes;
    return start + to + (move.promotion === null ? '' : `=${LETTERS[move.promotion]}`) + suffix;
  }
  return LETTERS[move.kind] + departure(position, move) + takes + to + suffix;
}

function departure(position: Position, move: Move): string {
  const rivals = legalMoves(position).filter(
    ({ from, to, kind, castle }) =>
      to === move.to && kind === move.kind && from !== move.from && castle === null,
  );
  if (rivals.length === 0) return '';
  const name = squareName(move.from);
  if (rivals.every(({ from }) => (from & 7) !== (move.from & 7))) return name.charAt(0);
  if (rivals.every(({ from }) => from >> 3 !== move.from >> 3)) return name.charAt(1);
  return name;
}

/**
 * The one legal move that the text names. A move number in front, marks behind (`+ # ++ ! ?? e.p.`), missing
 * `x`, `=` and surplus departure squares change nothing: they never decide which move is meant. A promotion
 * must name the new man.
 */
export function parseSan(position: Position, text: string): Result<Move, SanReason> {
  const said = text.slice(0, 40);
  const bare = said.trim().replace(NUMBER, '').replace(MARKS, '').trim();
  const candidates = candidatesFor(position, bare);
  if (candidates === null) return refuse({ code: 'not-san', text: said });
  const [first, second] = candidates;
  if (first === undefined) return refuse({ code: 'not-legal', text: said });
  if (second === undefined) return ok(first);
  return refuse({ code: 'ambiguous', text: said, candidates: candidates.map(writeUci) });
}

function candidatesFor(position: Position, bare: string): readonly Move[] | null {
  if (/^([Oo0])-\1$/.test(bare)) return legalMoves(position).filter(({ castle }) => castle === 'short');
  if (/^([Oo0])-\1-\1$/.test(bare)) return legalMoves(position).filter(({ castle }) => castle === 'long');
  const parts = SHAPE.exec(bare);
  if (parts === null) return null;
  const [, letter = '', file = '', rank = '', to = '', promotion = parts[6] ?? ''] = parts;
  const kind = letter === '' ? 'p' : letter.toLowerCase();
  return legalMoves(position).filter((move) => {
    const from = squareName(move.from);
    // A pawn's capture begins with its file: "d5" never means exd5.
    const isNamed = kind !== 'p' || move.captured === null || file !== '';
    return (
      move.kind === kind &&
      move.castle === null &&
      squareName(move.to) === to &&
      from.startsWith(file) &&
      from.endsWith(rank) &&
      isNamed &&
      (move.promotion ?? '') === promotion.toLowerCase()
    );
  });
}
