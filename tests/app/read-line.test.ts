import { describe, expect, test } from 'vitest';
import { readText } from '#lib/reading/read-text.ts';
import type { ReadLine } from '#lib/reading/reading.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { plainLine, printLine, readingsToShow } from '../../app/_ui/read-line.ts';
import { positionOf } from '../support/positions.ts';

const HEALEY = positionOf('8/1n3Np1/1N4Q1/1bkP4/p1p2p2/P1P2R2/3P2PK/B2R4 w - - 0 1');

/** A line from words like `d1h1` (solver) and `.b5d7` (defender). */
function line(text: string): ReadLine {
  return text.split(' ').map((word, i) => ({
    uci: word.replace('.', ''),
    by: word.startsWith('.') ? 'defender' : 'solver',
    start: i,
    end: i,
    isTypo: false,
  }));
}

test('[R8] a full line prints with numbers, and the board stands at its end', () => {
  const printed = printLine(HEALEY, line('d1h1 .b5d7 g6b1'), 'KQRBN');
  expect(plainLine(printed)).toBe('1 Rh1 Bd7 2 Qb1');
  expect(writeFen(printed.position)).toContain('BQ5R b');
  expect(printed.lastMove).toBe('g6b1');
  expect(printed.hasGap).toBe(false);
});

test('[R8] a gap stays open: nothing is filled in, and what follows stands with both squares', () => {
  const printed = printLine(HEALEY, line('d1h1 g6b1'), 'KDTLS');
  expect(plainLine(printed)).toBe('1 Th1 … 2 Dg6–b1');
  expect(printed.lastMove).toBe('d1h1');
});

test('[R8] a capture after a gap is not told: it would depend on the reply that was left out', () => {
  // After 1 Rh1 Nd6 the queen takes there; after other replies d6 is empty.
  expect(plainLine(printLine(HEALEY, line('d1h1 g6d6'), 'KQRBN'))).toBe('1 Rh1 … 2 Qg6–d6');
  // Here every reply leaves the pawn where it can be taken, and still nothing is said.
  expect(plainLine(printLine(HEALEY, line('d1h1 g6g7'), 'KQRBN'))).toBe('1 Rh1 … 2 Qg6–g7');
});

test('where Black solves, the first move has dots and the numbers go on with White', () => {
  const start = positionOf('r3k3/8/8/8/8/8/5PPP/6K1 b - - 0 1');
  expect(plainLine(printLine(start, line('a8a1'), 'KQRBN'))).toBe('1… Ra1#');
  expect(plainLine(printLine(start, line('a8a2 .h2h3 a2a1'), 'KQRBN'))).toBe('1… Ra2 2 h3 Ra1+');
});

describe('which readings are shown', () => {
  const read = (text: string) => readText({ position: HEALEY, text });

  test('[R14] the turned line, where nothing can be played as written', () => {
    const { lines, isTurned } = readingsToShow(read('Ra8 Be2 Qg8'));
    expect(isTurned).toBe(true);
    expect(lines[0]?.line.map(({ uci }) => uci)).toEqual(['d1h1', 'b5d7', 'g6b1']);
  });

  test('[R8] none, where the first move cannot be played', () => {
    expect(readingsToShow(read('1. d8=Q'))).toEqual({ lines: [], isTurned: false });
  });

  test('[R6] every reading that has a move', () => {
    expect(readingsToShow(read('Rf1 Bd7 Qb1')).lines).toHaveLength(2);
  });
});
