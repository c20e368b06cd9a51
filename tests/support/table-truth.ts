import { expect } from 'vitest';
import type { Material } from '#lib/engine/material.ts';
import type { TableResult, TableSet } from '#lib/engine/table-set.ts';
import type { Random } from '#lib/kit/random.ts';
import { isCheck } from '#lib/rules/attacks.ts';
import { checkPosition } from '#lib/rules/check-position.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { playMove } from '#lib/rules/play-move.ts';
import { KINDS, manOf, type Position } from '#lib/rules/position.ts';
import { writeFen } from '#lib/rules/write-fen.ts';

/** A legal placement of a material, of either colour, by chance; with an en passant square where one is possible. */
export function randomPlacement(material: Material, random: Random): Position {
  for (;;) {
    const board = new Uint8Array(64);
    const isTurned = random.int(2) === 1;
    let kings = 0;
    for (const letter of material.toLowerCase()) {
      if (letter === 'k') kings += 1;
      const side = (kings === 1) !== isTurned ? 'w' : 'b';
      const kind = KINDS.find((known) => known === letter) ?? 'k';
      board[random.int(64)] = manOf(side, kind);
    }
    const position: Position = {
      board,
      turn: random.int(2) === 0 ? 'w' : 'b',
      castling: 0,
      enPassant: -1,
      halfmoveClock: 0,
      fullmoveNumber: 1,
    };
    if (board.filter((man) => man !== 0).length !== material.length) continue;
    const passing = withEnPassant(position, random);
    if (checkPosition(passing).ok) return passing;
    if (checkPosition(position).ok) return position;
  }
}

function withEnPassant(position: Position, random: Random): Position {
  const isWhite = position.turn === 'w';
  const passed = (isWhite ? 40 : 16) + random.int(8);
  const stands = isWhite ? passed - 8 : passed + 8;
  const from = isWhite ? passed + 8 : passed - 8;
  const isPossible =
    position.board[stands] === manOf(isWhite ? 'b' : 'w', 'p') &&
    position.board[passed] === 0 &&
    position.board[from] === 0;
  return isPossible ? { ...position, enPassant: passed } : position;
}

/** Says what the result must be from the results after all legal moves. */
function resultByMoves(tables: TableSet, position: Position): Pick<TableResult, 'result' | 'distance'> {
  const moves = legalMoves(position);
  if (moves.length === 0) {
    return isCheck(position) ? { result: 'lost', distance: 0 } : { result: 'drawn', distance: null };
  }
  const after = moves.map((move) => tables.probe(playMove(position, move)));
  const wins = after.flatMap((it) => (it?.result === 'lost' ? [(it.distance ?? 0) + 1] : []));
  if (wins.length > 0) return { result: 'won', distance: Math.min(...wins) };
  if (after.some((it) => it?.result === 'drawn')) return { result: 'drawn', distance: null };
  return { result: 'lost', distance: Math.max(...after.map((it) => it?.distance ?? 0)) };
}

/** Does the table's result of this position follow from those one move later? */
export function isOneStepTrue(tables: TableSet, position: Position): boolean {
  const { result, distance } = resultByMoves(tables, position);
  const found = tables.probe(position);
  return found?.result === result && found.distance === distance;
}

/** Expects so, and names the position where not. */
export function expectOneStepTrue(tables: TableSet, position: Position): void {
  expect(isOneStepTrue(tables, position), writeFen(position)).toBe(true);
}
