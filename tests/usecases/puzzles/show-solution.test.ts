import { beforeAll, describe, expect, test } from 'vitest';
import { showSolution } from '#lib/usecases/puzzles/show-solution.ts';
import { buildHealey, markEverything, revealNow, send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';
import { accepted, refused } from '../../support/positions.ts';

givenDatabase();

const ask = (slug: string, asks: string | null = null) => showSolution({ slug, locale: 'en', asks });

describe('the solution page’s facts', () => {
  let slug = '';
  beforeAll(async () => {
    const puzzle = await buildHealey();
    slug = puzzle.slug;
    await send(slug, '1.Rh1 Bd7 2.Qb1', { name: 'Ilse Varga' });
    await send(slug, 'Th1 Ld7 Db1');
    await send(slug, 'Qb1', { name: 'quiet_move' });
    await send(slug, 'Qb1 Nd8', { name: 'rook_77' });
    await send(slug, 'no idea', { name: 'Nobody' });
    await markEverything(puzzle.puzzleId, puzzle.terms);
    // [T2] First, that there is nothing to see before the reveal although everything is marked.
    expect(refused(await ask(slug))).toEqual({ code: 'unknown-puzzle' });
    expect(refused(await ask(slug, 'd1h1'))).toEqual({ code: 'unknown-puzzle' });
    await revealNow(puzzle.puzzleId);
  });

  test('[T2] they exist from the reveal on, and the key is the published one', async () => {
    const shown = accepted(await ask(slug));
    expect(shown.keys).toEqual(['d1h1']);
    expect(shown.lines[0]?.moves.slice(0, 3)).toEqual(['d1h1', 'b5d7', 'g6b1']);
    expect(shown.lines.length).toBeGreaterThan(2);
  });

  test('first moves are counted over the answers that count, with the book’s word on each', async () => {
    const shown = accepted(await ask(slug));
    expect(shown.firstMoves.map(({ move, count, verdict }) => [move, count, verdict])).toEqual([
      ['d1h1', 2, 'holds'],
      ['g6b1', 2, 'slips'],
    ]);
    expect(shown.firstMoves[1]?.reply).not.toBeNull();
    expect(shown.answers).toBe(4);
  });

  test('the roll names those who solved it and counts those without a name', async () => {
    expect(accepted(await ask(slug)).roll).toEqual({
      names: ['Ilse Varga'],
      namedCount: 1,
      namelessCount: 1,
    });
  });

  test('[A5] *Why not?* is answered from the book for a legal first move, and for nothing else', async () => {
    expect(accepted(await ask(slug, 'g6b1')).asked).toMatchObject({ verdict: 'slips' });
    expect(accepted(await ask(slug, 'a1a8')).asked).toBeNull();
    expect(accepted(await ask(slug, '')).asked).toBeNull();
  });
});

test('an address that leads nowhere and a draft are refused alike', async () => {
  expect(refused(await ask('nowhere'))).toEqual({ code: 'unknown-puzzle' });
});
