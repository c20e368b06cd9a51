import { describe, expect, test } from 'vitest';
import { matchToken } from '#lib/reading/match-token.ts';
import { shapeOf } from '#lib/reading/shape.ts';
import { KIND_BIT } from '#lib/rules/moves-to.ts';
import { writeUci } from '#lib/rules/uci.ts';
import { positionOf } from '../support/positions.ts';

type Said = Parameters<typeof shapeOf>[0];

function matched(fen: string, said: Said, lastTo = -1): string[] {
  return matchToken(positionOf(fen), [shapeOf(said)], lastTo)
    .map(({ move }) => writeUci(move))
    .sort();
}

const file = (letter: string): number => 1 << (letter.charCodeAt(0) - 97);
const rank = (digit: number): number => 1 << (digit - 1);

describe('shapes against legal moves', () => {
  const cases: [why: string, fen: string, said: Said, moves: string[]][] = [
    [
      '[R2] two knights reach the square',
      '4k3/8/8/8/8/5N2/8/1N2K3 w - - 0 1',
      { kinds: KIND_BIT.n, toFiles: file('d'), toRanks: rank(2) },
      ['b1d2', 'f3d2'],
    ],
    [
      '[R2] a pinned knight is no second knight',
      '4r1k1/8/8/8/8/8/4N3/1N2K3 w - - 0 1',
      { kinds: KIND_BIT.n, toFiles: file('c'), toRanks: rank(3) },
      ['b1c3'],
    ],
    [
      '[R9] a promotion without a man is a queen',
      '8/P6k/8/8/8/8/6K1/8 w - - 0 1',
      { kinds: KIND_BIT.p, toFiles: file('a'), toRanks: rank(8) },
      ['a7a8q'],
    ],
    [
      '[R9] a named man is that man',
      '8/P6k/8/8/8/8/6K1/8 w - - 0 1',
      { kinds: KIND_BIT.p, toFiles: file('a'), toRanks: rank(8), promotion: 'n' },
      ['a7a8n'],
    ],
    [
      '[R1] the king’s goal names castling',
      'r3k3/8/8/8/8/8/8/4K2R w K - 0 1',
      { kinds: KIND_BIT.k, toFiles: file('g'), toRanks: rank(1) },
      ['e1g1'],
    ],
    [
      '[R1] a bare square is a step before it is a capture',
      '4k3/8/8/8/3p4/4P3/3P4/4K3 w - - 0 1',
      { kinds: KIND_BIT.p, toFiles: file('d'), toRanks: rank(3) },
      ['d2d3'],
    ],
    [
      '[R1] descriptive ranks count from the mover’s side',
      'rnbqkbnr/pppp1ppp/8/4p3/6P1/5P2/PPPPP2P/RNBQKBNR b KQkq - 0 2',
      { kinds: KIND_BIT.q, toFiles: file('h'), toRanks: rank(5), isRelative: true },
      ['d8h4'],
    ],
  ];
  for (const [why, fen, said, moves] of cases) {
    test(why, () => {
      expect(matched(fen, said)).toEqual(moves);
    });
  }

  test('[R2] "takes" takes the man that has just moved, where it can', () => {
    const fen = '4k3/8/8/3p1p2/4P3/8/8/4K3 w - - 0 1';
    const takes: Said = { isCapture: true, isRecapture: true };
    expect(matched(fen, takes, 35)).toEqual(['e4d5']);
    expect(matched(fen, takes)).toEqual(['e4d5', 'e4f5']);
  });
});
