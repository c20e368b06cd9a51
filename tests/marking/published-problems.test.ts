import { describe, expect, it } from 'vitest';
import { createEngine } from '#lib/engine/create-engine.ts';
import { markFirstMoves, standingOf } from '../support/mark-first-moves.ts';
import { mateCases } from '../support/mate-cases.ts';

const engine = createEngine({ hashMiB: 1 });
// The bench marks them all; here every fifth of the mates in two, in the order of the file.
const sample = mateCases()
  .filter(({ id, moves }) => id.startsWith('problem') && moves === 2)
  .filter((_, at) => at % 5 === 0);

describe('published problems', () => {
  it.each(sample.map(({ id, fen, moves, keys }) => [id, fen, moves, keys] as const))(
    '[V1] %s: every first move that is no key is wrong or slower, its refutation or proof checked',
    (_, fen, moves, keys) => {
      const marked = markFirstMoves(engine, fen, moves);
      expect(marked.filter((one) => standingOf(one, keys) === 'fault').map(({ row }) => row.move)).toEqual(
        [],
      );
      expect(marked.filter((one) => standingOf(one, keys) === 'key')).toHaveLength(keys.length);
    },
  );
});
