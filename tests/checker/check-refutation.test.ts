import { expect, test } from 'vitest';
import { checkRefutation, type Refutation, type RefutationFault } from '#lib/checker/check-refutation.ts';
import { MATES } from '../support/mates.ts';

const tries: [string, Refutation][] = [
  // The tries and their only refutations as published with the problems (sources in tests/support/mates.ts).
  ['Morphy: Ra5? a6!', { fen: MATES.morphy.fen, move: 'a1a5', reply: 'a7a6', movesLeft: 1 }],
  ['Morphy: Rxa7+? Bxa7!', { fen: MATES.morphy.fen, move: 'a1a7', reply: 'b8a7', movesLeft: 1 }],
  ['Loyd: Nc2+? dxc2!', { fen: MATES.loyd.fen, move: 'e3c2', reply: 'd3c2', movesLeft: 1 }],
  ['Schwarz: Kd1? Kb3!', { fen: MATES.schwarz.fen, move: 'e1d1', reply: 'c3b3', movesLeft: 2 }],
  ['Schwarz: Rhh4? Kc2!', { fen: MATES.schwarz.fen, move: 'h1h4', reply: 'c3c2', movesLeft: 2 }],
  [
    'no moves left: a mate in 1 that is none',
    { fen: MATES.morphy.fen, move: 'a1a2', reply: 'b8c7', movesLeft: 0 },
  ],
  [
    'a move that stalemates needs no reply',
    { fen: MATES.queenMate.fen, move: 'g6f7', reply: null, movesLeft: 4 },
  ],
  [
    'nor does one that leaves bare kings',
    { fen: '8/8/8/8/8/3k4/1q6/K7 w - - 0 1', move: 'a1b2', reply: null, movesLeft: 1 },
  ],
  [
    'fifty moves are full before the mate',
    { fen: 'kbK5/pp6/1P6/8/8/8/8/R7 w - - 98 60', move: 'a1a6', reply: 'b8c7', movesLeft: 1 },
  ],
  [
    'fifty moves are full with the move',
    { fen: '7k/8/5K2/8/8/8/8/6Q1 w - - 99 80', move: 'f6f7', reply: null, movesLeft: 1 },
  ],
  [
    'a reply that mates refutes',
    { fen: '6k1/5ppp/8/8/8/8/rP3PPP/6K1 w - - 0 1', move: 'b2b3', reply: 'a2a1', movesLeft: 2 },
  ],
];
test.each(tries)('[T1] passes, every way to mate tried: %s', (_what, refutation) => {
  expect(checkRefutation(refutation)).toMatchObject({ status: 'passed', reason: null, isExhaustive: true });
});

const faults: [string, Refutation, RefutationFault][] = [
  [
    'at the last of fifty moves a mate is a mate',
    { fen: '7k/8/5K2/8/8/8/8/6Q1 w - - 97 80', move: 'f6f7', reply: 'h8h7', movesLeft: 1 },
    { code: 'mate-follows', move: 'g1g7' },
  ],
  [
    'another reply does not help',
    { fen: MATES.loyd.fen, move: 'h5a5', reply: 'd8d5', movesLeft: 1 },
    { code: 'mate-follows', move: 'a5d5' },
  ],
  [
    'mate in two follows',
    { fen: MATES.schwarz.fen, move: 'h1h3', reply: 'c3b2', movesLeft: 2 },
    { code: 'mate-follows', move: 'e1d2' },
  ],
  [
    'the move is not legal',
    { fen: MATES.morphy.fen, move: 'a1b2', reply: 'a7a6', movesLeft: 1 },
    { code: 'illegal-move', move: 'a1b2' },
  ],
  [
    'the reply is not legal',
    { fen: MATES.morphy.fen, move: 'a1a5', reply: 'a7a5', movesLeft: 1 },
    { code: 'illegal-move', move: 'a7a5' },
  ],
  [
    'the reply is a move of the solver',
    { fen: MATES.morphy.fen, move: 'a1a5', reply: 'a5a6', movesLeft: 1 },
    { code: 'wrong-side', move: 'a5a6' },
  ],
  [
    'the move is mate',
    { fen: MATES.queenMate.fen, move: 'g6g7', reply: null, movesLeft: 1 },
    { code: 'is-mate' },
  ],
  [
    'no reply, and the game goes on',
    { fen: MATES.morphy.fen, move: 'a1a5', reply: null, movesLeft: 1 },
    { code: 'no-draw' },
  ],
  [
    'a position that cannot be',
    { fen: '8/8/8/8/8/8/8/8 w - - 0 1', move: 'a1a5', reply: null, movesLeft: 1 },
    { code: 'bad-position' },
  ],
];
test.each(faults)('[T1] fails: %s', (_what, refutation, reason) => {
  expect(checkRefutation(refutation)).toMatchObject({ status: 'failed', reason, isExhaustive: false });
});

test('[T1] with more than two moves left only the moves are replayed, and it says so', () => {
  const refutation = { fen: MATES.schwarz.fen, move: 'h1h3', reply: 'c3b2', movesLeft: 3 };
  expect(checkRefutation(refutation)).toEqual({
    status: 'passed',
    reason: null,
    positions: 2,
    isExhaustive: false,
  });
});

test('[T1] beyond the bound of positions it is too large, not wrong', () => {
  const refutation = { fen: MATES.schwarz.fen, move: 'e1d1', reply: 'c3b3', movesLeft: 2 };
  const { positions } = checkRefutation(refutation);
  expect(checkRefutation(refutation, { maxPositions: positions }).status).toBe('passed');
  expect(checkRefutation(refutation, { maxPositions: positions - 1 })).toEqual({
    status: 'too-large',
    reason: null,
    positions: positions - 1,
    isExhaustive: false,
  });
});
