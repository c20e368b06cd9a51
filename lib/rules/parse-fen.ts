// How a FEN text becomes a position, or a reason that names the field and what was expected.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { CASTLINGS } from './castling.ts';
import { checkPosition, type PositionReason } from './check-position.ts';
import { type Position, parseSquare, type Square } from './position.ts';

/** The fields of FEN, in their order. */
export type FenField = 'men' | 'turn' | 'castling' | 'en-passant' | 'halfmove-clock' | 'fullmove-number';

/** Why a text is no FEN: how many fields it has, which field is malformed, or why it cannot be played. */
export type FenReason =
  | { readonly code: 'field-count'; readonly found: number }
  /** `rank` (8 to 1) only in the field of the men; `found` is the offending text, cut at 40 characters. */
  | {
      readonly code: 'field';
      readonly field: FenField;
      readonly found: string;
      readonly rank: number | null;
    }
  | { readonly code: 'position'; readonly position: PositionReason };

const MEN = '.PNBRQK..pnbrqk';
const LONGEST = 200;

/**
 * A playable position from six FEN fields; four are taken as well (EPD, and what people paste), the
 * clocks then being 0 and 1. Fields may be parted by any white space.
 */
export function parseFen(text: string): Result<Position, FenReason> {
  const fields = text.slice(0, LONGEST).trim().split(/\s+/);
  const [men = '', turn = '', castling = '', enPassant = '', clock = '0', number = '1'] = fields;
  if ((fields.length !== 6 && fields.length !== 4) || text.trim().length > LONGEST) {
    return refuse({ code: 'field-count', found: text.trim() === '' ? 0 : text.trim().split(/\s+/).length });
  }
  const board = parseMen(men);
  if (!board.ok) return board;
  if (turn !== 'w' && turn !== 'b') return badField('turn', turn);
  if (!/^(-|K?Q?k?q?)$/.test(castling)) return badField('castling', castling);
  const square = parseEnPassant(enPassant);
  if (square === null) return badField('en-passant', enPassant);
  if (!/^\d{1,4}$/.test(clock)) return badField('halfmove-clock', clock);
  if (!/^[1-9]\d{0,4}$/.test(number)) return badField('fullmove-number', number);
  const checked = checkPosition({
    board: board.value,
    turn,
    castling: CASTLINGS.reduce(
      (sum, { right, letter }) => (castling.includes(letter) ? sum | right : sum),
      0,
    ),
    enPassant: square,
    halfmoveClock: Number(clock),
    fullmoveNumber: Number(number),
  });
  return checked.ok ? checked : refuse({ code: 'position', position: checked.reason });
}

function parseEnPassant(text: string): Square | null {
  return text === '-' ? -1 : parseSquare(text);
}

function parseMen(text: string): Result<Uint8Array, FenReason> {
  const rows = text.split('/');
  if (rows.length !== 8) return badField('men', text);
  const board = new Uint8Array(64);
  for (const [index, row] of rows.entries()) {
    const rank = 7 - index;
    let file = 0;
    for (const letter of row) {
      if (letter >= '1' && letter <= '8') {
        file += Number(letter);
        continue;
      }
      const man = letter === '.' ? -1 : MEN.indexOf(letter);
      if (man < 0 || file > 7) return badField('men', row, rank + 1);
      board[rank * 8 + file] = man;
      file += 1;
    }
    if (file !== 8) return badField('men', row, rank + 1);
  }
  return ok(board);
}

function badField(field: FenField, found: string, rank: number | null = null): Result<never, FenReason> {
  return refuse({ code: 'field', field, found: found.slice(0, 40), rank });
}
