import { expect, test } from 'vitest';
import { createEngine } from '#lib/engine/create-engine.ts';
import { judgeMoves } from '#lib/engine/judge-moves.ts';
import { isOpenVerdict } from '#lib/engine/verdict.ts';

test('[V2] open is what a search says does not hold; what holds, and what the rules settle, is not', () => {
  // 1.Qb6 stalemates, 1.Qb8+ gives the queen away in a locked position, 1.Qd7 keeps it.
  const verdicts = judgeMoves(createEngine({ hashMiB: 1 }), {
    fen: 'k7/8/5p1p/1Q3PpP/6P1/8/8/6K1 w - - 0 1',
    moves: ['b5b6', 'b5b8', 'b5d7'],
    claim: { task: 'win', holdBound: 300, slipBound: 150 },
    budgets: { proofNodes: 20_000, budgetNodes: 20_000 },
    isAfterHolding: false,
  });
  expect(verdicts.map((one) => [one.move, one.verdict, isOpenVerdict(one)])).toEqual([
    ['b5b6', 'slips', false],
    ['b5b8', 'slips', true],
    ['b5d7', 'holds', false],
  ]);
  const [first] = verdicts;
  expect(first && isOpenVerdict({ ...first, verdict: 'unclear', depth: 0 })).toBe(true);
});
