import { expect, test } from 'vitest';
import { createEngine, loadFen } from '#lib/engine/create-engine.ts';
import { listLegal, uciOf } from '#lib/engine/kernel-moves.ts';

test('[V0] moves of the kernel are read as UCI, promotions and castling included, in an order of their own', () => {
  const engine = createEngine({ hashMiB: 1 });
  loadFen(engine, '8/P6k/8/8/8/8/8/R3K3 w Q - 0 1');
  const moves = listLegal(engine).map(({ uci }) => uci);
  expect(moves).toEqual([...moves].sort());
  expect(moves.filter((uci) => uci.startsWith('a7'))).toEqual(['a7a8b', 'a7a8n', 'a7a8q', 'a7a8r']);
  expect(moves).toContain('e1c1');
});

test('[V0] no move is null', () => {
  expect(uciOf(0)).toBe(null);
});
