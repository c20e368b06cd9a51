import { describe, expect, it } from 'vitest';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { findUci } from '#lib/rules/uci.ts';
import { type Letters, movesText, sanFor } from '#lib/words/move-text.ts';

const HEALEY = '8/1n3Np1/1N4Q1/1bkP4/p1p2p2/P1P2R2/3P2PK/B2R4 w - - 0 1';

function print(fen: string, uci: string, letters: Letters): string {
  const position = parseFen(fen);
  const move = position.ok ? findUci(position.value, uci) : null;
  if (!position.ok || move === null) throw new Error(`${uci} in ${fen}`);
  return sanFor(position.value, move, letters);
}

describe('sanFor', () => {
  it.each<[string, string, Letters, string]>([
    [HEALEY, 'g6d6', 'en', 'Qd6+'],
    [HEALEY, 'g6d6', 'de', 'Dd6+'],
    [HEALEY, 'g6d6', 'figurine', '♕d6+'],
    [HEALEY, 'b6a4', 'de', 'Sxa4+'],
    ['8/2P4R/k7/8/2K2PP1/8/8/8 w - - 0 1', 'c7c8n', 'de', 'c8=S'],
    ['8/2Pp4/8/N1P5/4p3/P1k5/8/R3K3 w Q - 0 1', 'e1c1', 'de', 'O-O-O'],
    ['7R/7p/5P1k/4PKpP/8/8/8/8 w - g6 0 1', 'h5g6', 'figurine', 'hxg6'],
  ])('in %s writes %s in %s as %s', (fen, uci, letters, expected) => {
    expect(print(fen, uci, letters)).toBe(expected);
  });
});

describe('movesText', () => {
  it("numbers the solver's moves from 1", () => {
    expect(movesText(HEALEY, ['d1h1', 'b5d7', 'g6b1'], { letters: 'en' })).toBe('1 Rh1 Bd7 2 Qb1');
  });

  it('begins with a reply as the columns do', () => {
    const before = ['d1h1', 'b5d7', 'g6d6'];
    expect(movesText(HEALEY, ['b7d6'], { letters: 'de', before })).toBe('2 … Sxd6');
  });

  it('numbers the moves of a puzzle with Black to move', () => {
    const fen = 'rnbqkbnr/pppp1ppp/8/4p3/6P1/5P2/PPPPP2P/RNBQKBNR b KQkq - 0 2';
    expect(movesText(fen, ['d8e7', 'a2a3', 'a7a6'], { letters: 'en' })).toBe('1 … Qe7 2 a3 a6');
  });

  it('stops before a move that is not legal', () => {
    expect(movesText(HEALEY, ['d1h1', 'h2h8'], { letters: 'en' })).toBe('1 Rh1');
  });
});
