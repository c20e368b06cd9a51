import { describe, expect, test } from 'vitest';
import { createEngine } from '#lib/engine/create-engine.ts';
import { isEvident, quiescentValue } from '#lib/engine/evident.ts';
import { createTableSet } from '#lib/engine/table-set.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Position } from '#lib/rules/position.ts';
import { findUci } from '#lib/rules/uci.ts';

const engine = createEngine();
const tables = { set: createTableSet(), work: {} };

function at(fen: string): Position {
  const parsed = parseFen(fen);
  if (!parsed.ok) throw new Error(fen);
  return parsed.value;
}

/** Is the win evident in a position with the defender to move, these replies being the adequate ones? */
function evidentAfter(fen: string, replies: readonly string[]): boolean {
  const position = at(fen);
  const asked = replies.map((uci) => {
    const move = findUci(position, uci);
    if (move === null) throw new Error(`${uci} is not legal in ${fen}`);
    return { move, after: playMove(position, move) };
  });
  return isEvident(engine, position, { replies: asked, winBound: 300, tables, budgetNodes: 60_000 });
}

const CASES: readonly [string, readonly string[], boolean, string][] = [
  ['R5k1/5ppp/8/8/8/8/8/4K3 b - - 0 1', [], true, 'checkmate'],
  ['8/8/8/3k4/8/3QK3/8/8 b - - 0 1', ['d5e5'], true, 'a won table position'],
  ['6k1/5ppp/8/8/8/8/5PPP/4R1K1 b - - 0 1', ['h7h6', 'g8f8'], true, 'a rook ahead, every quiet move holds'],
  ['4r1k1/5ppp/8/8/8/8/5PPP/4R1K1 b - - 0 1', [], false, 'no reply to look at and nothing exact'],
  [
    '2q3k1/5ppp/8/3N4/8/8/5PPP/6K1 b - - 0 1',
    ['c8d7'],
    false,
    'the queen steps away from the fork: nothing is won yet',
  ],
  [
    'r5k1/5ppp/8/8/8/8/3Q1PPP/3R2K1 b - - 0 1',
    ['a8a1'],
    true,
    'the rook gives itself: taking it back is plain',
  ],
];

describe('[O1] is the win evident?', () => {
  for (const [fen, replies, expected, why] of CASES) {
    test(`[O1] ${expected ? 'evident' : 'not evident'}: ${why}`, () => {
      expect(evidentAfter(fen, replies)).toBe(expected);
    });
  }

  test('[O1] one reply that leaves something to find is enough to say no', () => {
    // After ... Kf8 anything wins; ... Rd8 pins nothing but only one move holds the rook's side.
    const fen = '6k1/5ppp/8/8/8/8/5PPP/4R1K1 b - - 0 1';
    expect(evidentAfter(fen, ['h7h6'])).toBe(true);
    expect(evidentAfter('4r1k1/5ppp/8/8/8/8/5PPP/4R1K1 b - - 0 1', ['e8e1', 'h7h6'])).toBe(false);
  });
});

describe('[O1] the quiescent value plays captures out and looks at checks', () => {
  test('[O1] a hanging queen is taken', () => {
    expect(quiescentValue(engine, at('4k3/8/8/3q4/4P3/8/PPP5/4K3 w - - 0 1'))).toBeGreaterThan(200);
  });
  test('[O1] a defended man is left alone', () => {
    const value = quiescentValue(engine, at('4k3/2p5/3p4/8/8/8/8/3QK3 w - - 0 1'));
    expect(value).toBeGreaterThan(700);
  });
  test('[O1] a mate by a quiet check is seen', () => {
    expect(quiescentValue(engine, at('6k1/5ppp/8/8/8/8/8/R3K3 w - - 0 1'))).toBeGreaterThan(29_000);
  });
});
