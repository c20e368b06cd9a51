// Why a position, a game or a move was not taken, in English.

export const rulesEn = {
  'field-count': 'A FEN has six parts (four will do), parted by spaces: this has {found, number}.',
  'field-men': 'FEN, the men: expected eight ranks parted by "/", each of eight squares: found "{found}".',
  'field-rank':
    'FEN, the men: rank {rank} is not eight squares of p n b r q k, capitals for White, and numbers for gaps: found "{found}".',
  'field-turn': 'FEN, side to move: expected "w" or "b", found "{found}".',
  'field-castling': 'FEN, castling rights: expected "-" or letters of "KQkq" in that order, found "{found}".',
  'field-en-passant': 'FEN, en passant square: expected "-" or a square such as "e3", found "{found}".',
  'field-halfmove-clock': 'FEN, half-move clock: expected a whole number from 0 to 9999, found "{found}".',
  'field-fullmove-number': 'FEN, move number: expected a whole number from 1 to 99999, found "{found}".',
  kings: '{side, select, w {White} other {Black}} must have one king and has {count, number}.',
  'too-many-men': '{side, select, w {White} other {Black}} may have 16 men and has {count, number}.',
  'too-many-pawns': '{side, select, w {White} other {Black}} may have 8 pawns and has {count, number}.',
  'pawn-on-last-rank': 'No pawn can stand on {square}.',
  'king-can-be-taken':
    '{side, select, w {White} other {Black}} is in check (from {squares}), but it is the other side to move.',
  'castling-right': 'The castling right "{letter}" needs king and rook on their first squares.',
  'en-passant-square': 'No pawn can just have passed {square}: check the en passant square.',
  'not-san': '"{text}" is not a move in standard notation (such as Nf3, exd5, O-O, e8=Q).',
  'not-legal': '{text} is not a legal move here.',
  ambiguous: '{text} fits several moves: {candidates}.',
  'game-too-long': 'The game is too long: at most {limit, number} characters.',
  'game-empty': 'There is no game in this text.',
  'game-not-closed': 'Line {line, number}: "{opened}" is never closed.',
  'game-tag': 'Line {line, number}: expected a tag such as [Event "Name"], found {found}.',
  'game-start': 'The start position of the game (tag FEN) cannot be used. {why}',
  'game-move': 'Line {line, number}, half-move {ply, number}: {why}',
} as const;
