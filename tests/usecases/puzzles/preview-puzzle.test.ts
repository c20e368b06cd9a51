import { describe, expect, test } from 'vitest';
import { previewPuzzle } from '#lib/usecases/puzzles/preview-puzzle.ts';

const HEALEY = '8/1n3Np1/1N4Q1/1bkP4/p1p2p2/P1P2R2/3P2PK/B2R4 w - - 0 1';

function preview(position: string, ply: number | null = null, published: string[] = []) {
  const read = previewPuzzle({ position, ply, published });
  return read.ok ? read.value : read.reason;
}

describe('[V9] what was pasted is read before it is stored', () => {
  test('[V9] a FEN, with four fields or six, stands as six fields and has no plies', () => {
    expect(preview(HEALEY)).toMatchObject({ fen: HEALEY, ply: null, plies: [] });
    expect(preview(HEALEY.replace(' 0 1', ''))).toMatchObject({ fen: HEALEY });
  });

  test('[V9] a game gives its end, and every ply to pick with its move', () => {
    const read = preview('1. e4 e5 2. Bc4 Nc6 3. Qh5 Nf6');
    expect(read).toMatchObject({
      ply: 6,
      fen: 'r1bqkb1r/pppp1ppp/2n2n2/4p2Q/2B1P3/8/PPPP1PPP/RNB1K1NR w KQkq - 4 4',
    });
    const plies = 'plies' in read ? read.plies.map((one) => one.label) : [];
    expect(plies).toEqual(['', '1 e4', '1… e5', '2 Bc4', '2… Nc6', '3 Qh5', '3… Nf6']);
  });

  test('[V9] a ply is picked; one that the game has not is refused with its length', () => {
    expect(preview('1. e4 e5', 1)).toMatchObject({
      ply: 1,
      fen: 'rnbqkbnr/pppppppp/8/8/4P3/8/PPPP1PPP/RNBQKBNR b KQkq e3 0 1',
    });
    expect(preview('1. e4 e5', 3)).toEqual({ code: 'no-such-ply', most: 2 });
  });

  test('[V9] tags set the start, and a broken move names its place', () => {
    expect(preview(`[FEN "${HEALEY}"]\n[SetUp "1"]\n\n1. Rh1 Bd7`)).toMatchObject({ ply: 2 });
    expect(preview('1. e4 e5 2. Ke3')).toMatchObject({ code: 'pgn', reason: { code: 'move', ply: 3 } });
    expect(preview('8/8/8/8/8/8/8/8 w - - 0 1')).toMatchObject({ code: 'fen' });
    expect(preview('  ')).toEqual({ code: 'nothing' });
  });

  test("[V9] published lines are read back as a viewer's would be, in any notation", () => {
    const read = preview(HEALEY, null, ['1.Th1 Ld7 2.Db1', 'no idea', '1.Rh1 Bd7 2.Qa7']);
    const lines = 'lines' in read ? read.lines : [];
    expect(lines[0]?.readings[0]?.map((move) => move.uci)).toEqual(['d1h1', 'b5d7', 'g6b1']);
    expect(lines[1]?.readings).toEqual([]);
    expect(lines[2]?.impossibleAt).toBe(3);
  });
});
