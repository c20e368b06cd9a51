import { describe, expect, test } from 'vitest';
import type { MarkedMove } from '#lib/marking/mark.ts';
import type { ReadLine } from '#lib/reading/reading.ts';
import { buildLedger, type LedgerInput } from '#lib/usecases/answers/receipt-ledger.ts';
import { positionOf } from '../../support/positions.ts';

const start = positionOf('8/1n3Np1/1N4Q1/1bkP4/p1p2p2/P1P2R2/3P2PK/B2R4 w - - 0 1');
const written = (...moves: [string, 'solver' | 'defender'][]): ReadLine =>
  moves.map(([uci, by], i) => ({ uci, by, start: i, end: i + 1, isTypo: false }));
const holds = (uci: string, mateIn: number): MarkedMove => ({
  uci,
  verdict: 'holds',
  mateIn,
  value: null,
  by: null,
});

const SLIP: LedgerInput = {
  start,
  outcome: 'slipped',
  atMove: 2,
  line: ['d1h1', 'b5d7', 'g6d6', 'b7d6', 'f3d3'],
  reading: written(['d1h1', 'solver'], ['b5d7', 'defender'], ['g6d6', 'solver']),
  verdicts: [holds('d1h1', 3), { uci: 'g6d6', verdict: 'slips', mateIn: null, value: null, by: 'b7d6' }],
};

describe('[A1] the ledger of a mark', () => {
  test('ends with the slip, and the arrow is the reply that punishes it', () => {
    const ledger = buildLedger(SLIP);
    expect(ledger.rows.map((row) => [row.uci, row.verdict, row.mateIn])).toEqual([
      ['d1h1', 'holds', 3],
      ['b5d7', null, null],
      ['g6d6', 'slips', null],
    ]);
    expect(ledger.lastMove).toBe('b7d6');
    expect(ledger.fen).toContain('1N1Q4');
  });

  test('a reply that was not written is told apart', () => {
    const ledger = buildLedger({
      ...SLIP,
      outcome: 'solved',
      atMove: null,
      line: ['d1h1', 'b5d7', 'g6b1'],
      reading: written(['d1h1', 'solver'], ['g6b1', 'solver']),
      verdicts: [holds('d1h1', 3), holds('g6b1', 2)],
    });
    expect(ledger.rows.map((row) => row.isWritten)).toEqual([true, false, true]);
    expect(ledger.lastMove).toBe('g6b1');
  });

  test('a wrong first move is shown with its refutation at once', () => {
    const ledger = buildLedger({
      ...SLIP,
      outcome: 'wrong',
      atMove: 1,
      line: ['g6b1'],
      reading: written(['g6b1', 'solver']),
      verdicts: [{ uci: 'g6b1', verdict: 'slips', mateIn: null, value: null, by: 'b7d8' }],
    });
    expect(ledger.rows).toHaveLength(1);
    expect(ledger.lastMove).toBe('b7d8');
  });

  test('without a line there is nothing but the diagram', () => {
    const ledger = buildLedger({
      ...SLIP,
      outcome: 'unreadable',
      atMove: null,
      line: [],
      reading: null,
      verdicts: [],
    });
    expect(ledger).toEqual({ rows: [], fen: expect.stringContaining('3P2PK/B2R4 w'), lastMove: null });
  });
});
