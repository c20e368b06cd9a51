import { describe, expect, test } from 'vitest';
import { findUci } from '#lib/rules/uci.ts';
import {
  extendLine,
  lastPosition,
  lineOf,
  lineText,
  longMove,
  nextWord,
  shortenLine,
  shortMove,
  startLine,
} from '../../app/_ui/board/answer-line.ts';
import { positionOf, START_FEN } from '../support/positions.ts';

const HEALEY_FEN = '8/1n3Np1/1N4Q1/1bkP4/p1p2p2/P1P2R2/3P2PK/B2R4 w - - 0 1';
const HEALEY = positionOf(HEALEY_FEN);

function line(start = HEALEY, ...ucis: string[]) {
  const found = lineOf(start, ucis);
  if (found === null) throw new Error(`not playable: ${ucis}`);
  return found;
}

describe('the line on the board as text', () => {
  const cases: [string, string, string[], string, string][] = [
    ['White begins', HEALEY_FEN, ['d1h1', 'b5d7', 'g6b1'], 'KQRBN', '1. Rh1 Bd7 2. Qb1'],
    ['the same in German letters', HEALEY_FEN, ['d1h1', 'b5d7', 'g6b1'], 'KDTLS', '1. Th1 Ld7 2. Db1'],
    [
      'Black begins: dots show whose move it is',
      '4k3/8/8/8/8/8/8/R3K3 b Q - 0 1',
      ['e8e7', 'e1c1'],
      'KQRBN',
      '1... Ke7 2. O-O-O',
    ],
    [
      'a promotion in German letters, with check',
      '3k4/P7/8/8/8/8/8/4K3 w - - 0 1',
      ['a7a8q'],
      'KDTLS',
      '1. a8=D+',
    ],
    [
      'castling keeps its letters in every language',
      START_FEN,
      ['e2e4', 'e7e5', 'g1f3', 'b8c6', 'f1c4', 'f8c5', 'e1g1'],
      'KDTLS',
      '1. e4 e5 2. Sf3 Sc6 3. Lc4 Lc5 4. O-O',
    ],
  ];
  test.each(cases)('%s', (_, fen, moves, letters, text) => {
    expect(lineText(line(positionOf(fen), ...moves), letters)).toBe(text);
  });

  test('the next word is the line’s own next word', () => {
    const before = line(HEALEY, 'd1h1', 'b5d7');
    const move = findUci(lastPosition(before), 'g6b1');
    expect(move && nextWord(before, move, 'KQRBN')).toBe('2. Qb1');
  });
});

describe('building a line', () => {
  test('taking back leaves what stood before, and an empty line stays empty', () => {
    const two = line(HEALEY, 'd1h1', 'b5d7');
    expect(shortenLine(two)).toEqual(line(HEALEY, 'd1h1'));
    expect(shortenLine(startLine(HEALEY)).moves).toEqual([]);
  });

  test('adding a move plays it', () => {
    const move = findUci(HEALEY, 'd1h1');
    if (move === null) throw new Error('d1h1 is legal');
    expect(extendLine(startLine(HEALEY), move)).toEqual(line(HEALEY, 'd1h1'));
  });

  test('a line with a gap is none: the board cannot follow it', () => {
    expect(lineOf(HEALEY, ['d1h1', 'g6b1'])).toBeNull();
  });
});

test('moves are read back with both squares, captures with a cross', () => {
  const move = findUci(HEALEY, 'f7e5');
  expect(move && longMove(move, 'KDTLS')).toBe('Sf7–e5');
  const takes = findUci(positionOf('4k3/8/8/3p4/4P3/8/8/4K3 w - - 0 1'), 'e4d5');
  expect(takes && longMove(takes, 'KQRBN')).toBe('e4×d5');
});

test('short moves name the file where two men of a kind could go', () => {
  const position = positionOf('4k3/8/8/8/8/8/4K3/R6R w - - 0 1');
  const move = findUci(position, 'a1d1');
  expect(move && shortMove(position, move, 'KDTLS')).toBe('Tad1');
});
