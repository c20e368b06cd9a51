import { describe, expect, it } from 'vitest';
import { advantageInMen, isDecidedInDiagram } from '#lib/book/decided-in-diagram.ts';
import { createTree } from '#lib/book/position-tree.ts';
import { createBook } from '#lib/book/solution-book.ts';
import { DEFAULT_TERMS, type Task } from '#lib/book/terms.ts';
import { toRow } from '../support/ruled-book.ts';

const PAWN = '4k3/8/8/4K3/4P3/8/8/8 w - - 0 1';
const ROOK_UP = '4k3/pppp4/8/8/8/8/PPPP4/R3K3 w Q - 0 1';

function isDecided(fen: string, task: Task, moves: readonly string[]): boolean {
  const { root } = createTree(fen);
  const rows = moves.map((move) => ({
    ...toRow({ position: root.bookPosition, movesLeft: null, move }, { verdict: 'holds' }),
    evidence: { kind: 'table', material: 'KPK', distance: 13, line: [] } as const,
  }));
  return isDecidedInDiagram({ ...DEFAULT_TERMS, fen, task }, createBook(rows), root);
}

describe('isDecidedInDiagram', () => {
  it('[O1] a table win or draw in the diagram finishes nothing', () => {
    expect(isDecided(PAWN, { kind: 'win' }, ['e5e6'])).toBe(true);
    expect(isDecided(PAWN, { kind: 'draw' }, ['e5e6'])).toBe(true);
  });

  it('[O1] nor does being far ahead, where more than one move wins', () => {
    expect(isDecided(ROOK_UP, { kind: 'win' }, ['a1b1', 'e1c1'])).toBe(true);
    expect(isDecided(ROOK_UP, { kind: 'win' }, ['a1b1'])).toBe(false);
  });

  it('[V1] never in a mate task, and not before the first moves are judged', () => {
    expect(isDecided(PAWN, { kind: 'mate', moves: 13 }, ['e5e6'])).toBe(false);
    expect(isDecided(PAWN, { kind: 'win' }, [])).toBe(false);
  });
});

describe('advantageInMen', () => {
  it.each([
    [PAWN, 100],
    [ROOK_UP, 500],
    ['4k3/pppp4/8/8/8/8/PPPP4/R3K3 b Q - 0 1', -500],
  ])('of %s is %i', (fen, centipawns) => {
    expect(advantageInMen(createTree(fen).root.position)).toBe(centipawns);
  });
});
