import { expect, test } from 'vitest';
import { findAnswer } from '#lib/store/answers.ts';
import { db } from '#lib/store/client.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { loadBook } from '#lib/usecases/answers/loaded-book.ts';
import { toNewMark } from '#lib/usecases/answers/new-mark.ts';
import { parkedOpinion } from '#lib/usecases/answers/parked-mark.ts';
import { buildHealey, send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

test('[F11] the mark of a parked answer is unclear, asks for the book nothing, and groups equal texts', async () => {
  const { puzzleId, slug } = await buildHealey();
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  const book = puzzle === null ? null : await loadBook(db(), puzzle);
  const doubts: (string | null)[] = [];
  for (const text of ['1.Rh1 ', '1.RH1', '1.Qd6+']) {
    const answer = await findAnswer(db(), (await send(slug, text)).answerId);
    if (book === null || answer === null) throw new Error('nothing to mark');
    const opinion = parkedOpinion(book, answer);
    expect(opinion.wants).toEqual([]);
    const [mark] = toNewMark(opinion, 'late');
    expect(mark).toMatchObject({ outcome: 'unclear', points: 0, p: 0, flags: ['late'], overrule: null });
    doubts.push(opinion.doubt);
  }
  expect(doubts[0]).toBe(doubts[1]);
  expect(doubts[0]).not.toBe(doubts[2]);
});
