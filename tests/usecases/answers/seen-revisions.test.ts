import { describe, expect, test } from 'vitest';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { findAnswer } from '#lib/store/answers.ts';
import { db } from '#lib/store/client.ts';
import { appendFormerTerms } from '#lib/store/former-terms.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { loadTermsShown, revisionsToJudge, type StoodTerms } from '#lib/usecases/answers/seen-revisions.ts';
import { buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

const at = (hour: number) => new Date(Date.UTC(2026, 10, 21, hour));
const OTHER: PuzzleTerms = {
  ...MATE_IN_ONE,
  fen: '6k1/5ppp/8/8/8/8/5PPP/1R4K1 w - - 0 1',
  published: ['Rb8#'],
};
const REPRINTED: PuzzleTerms = { ...MATE_IN_ONE, published: ['1.Ra8#'] };

function stood(...terms: PuzzleTerms[]): StoodTerms[] {
  return terms.map((one, index) => ({
    revision: index + 1,
    terms: one,
    replacedAt: index + 1 === terms.length ? null : at(12 + 2 * index),
  }));
}

describe('[A6] the terms an answer is judged on', () => {
  const rows: [string, { told?: number; hour?: number; stated?: number }, PuzzleTerms[], number[]][] = [
    ['never amended', { hour: 11 }, [MATE_IN_ONE], [1]],
    ['position corrected, sent before', { hour: 11 }, [MATE_IN_ONE, OTHER], [1]],
    ['position corrected, sent after and not told: both', { hour: 13 }, [MATE_IN_ONE, OTHER], [2, 1]],
    ['told, whenever it was sent', { hour: 13, told: 1 }, [MATE_IN_ONE, OTHER], [1]],
    [
      'only keys corrected: nobody saw a difference, the new keys hold',
      { hour: 11 },
      [MATE_IN_ONE, REPRINTED],
      [2],
    ],
    [
      'keys corrected after the position: the old position keeps its own',
      { hour: 11 },
      [MATE_IN_ONE, OTHER, { ...OTHER, published: ['1.Rb8#'] }],
      [1],
    ],
    ['the correction itself taken back', { hour: 13 }, [MATE_IN_ONE, OTHER, REPRINTED], [3, 2]],
    ['a comment stated before, imported after', { hour: 13, stated: 11 }, [MATE_IN_ONE, OTHER], [1]],
    [
      'a comment that states a time after its own import',
      { hour: 11, stated: 13 },
      [MATE_IN_ONE, OTHER],
      [1],
    ],
  ];
  test.each(rows)('%s', (_what, { told = null, hour = 11, stated = null }, terms, expected) => {
    const answer = {
      seenRevision: told,
      receivedAt: at(hour),
      statedTo: stated === null ? null : at(stated),
    };
    expect(revisionsToJudge(answer, at(10), stood(...terms))).toEqual(expected);
  });
});

test('[A6, T2] an answer is shown with the terms of its mark, else with those seen, else with the newest possible', async () => {
  const { puzzleId, slug } = await buildPuzzle(await buildShow(), { terms: OTHER });
  const early = await send(slug, 'Ra8#', { seen: '1' });
  const former = { revision: 1, terms: MATE_IN_ONE, engineVersion: 'test' };
  await appendFormerTerms(db(), puzzleId, former);
  await db().puzzle.update({ where: { id: puzzleId }, data: { revision: 2 } });
  const told = await send(slug, 'Ra8#', { seen: '1' });
  const untold = await send(slug, 'Ra8#');
  const lied = await send(slug, 'Ra8#', { seen: 'a third' });
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  if (puzzle === null) throw new Error('gone');
  const shown = async (id: number, marked: number | null = null) => {
    const answer = await findAnswer(db(), id);
    if (answer === null) throw new Error('gone');
    return (await loadTermsShown(db(), puzzle, { answer, marked })).revision;
  };
  expect(await shown(early.answerId)).toBe(1);
  expect(await shown(told.answerId)).toBe(1);
  expect(await shown(untold.answerId)).toBe(2);
  expect(await shown(lied.answerId)).toBe(2);
  expect(await shown(untold.answerId, 1)).toBe(1);
});
