import { expect, test } from 'vitest';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { db } from '#lib/store/client.ts';
import { loadOpenRegrade } from '#lib/store/regrades.ts';
import { agreeToRegrade, askRegrade } from '#lib/usecases/answers/decide-regrade.ts';
import { gradeAgain } from '#lib/usecases/answers/grade-again.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { overruleMark } from '#lib/usecases/answers/overrule-mark.ts';
import { runRegrade } from '#lib/usecases/answers/run-regrade.ts';
import { extendBook } from '#lib/usecases/puzzles/extend-book.ts';
import { noteSheetRead } from '#lib/usecases/readout/note-sheet-read.ts';
import { showSheet } from '#lib/usecases/readout/show-sheet.ts';
import {
  buildMarked,
  marksOf,
  ruleAgainstAda,
  ruleForBoAndCy,
  type Viewer,
} from '../../support/build-regrade.ts';
import { buildPuzzle } from '../../support/build-show.ts';
import { send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';
import { verifyHere } from '../../support/engine-in-process.ts';

givenDatabase();

const WISH = { locale: 'en', length: 90, wordsAMinute: 150 } as const;
type Built = Awaited<ReturnType<typeof buildMarked>>;

/** The puzzle of the next episode, solved by these viewers of the last one. */
async function nextPuzzle(built: Built, solvers: readonly Viewer[]): Promise<number> {
  const { puzzleId, slug } = await buildPuzzle(built);
  await db().puzzle.update({ where: { id: puzzleId }, data: { engineVersion: ENGINE_VERSION } });
  for (const name of solvers) {
    const { answerId } = await send(slug, 'Ra8', { name });
    const before = await db().answer.findUniqueOrThrow({ where: { id: built.answers[name] } });
    await db().$executeRaw`update answer set solver_id = ${before.solverId} where id = ${answerId}`;
  }
  while ((await markAnswers({ puzzleId })).lacking > 0) await extendBook({ puzzleId, verify: verifyHere });
  return puzzleId;
}

async function readOut({ memberId }: Pick<Built, 'memberId'>, puzzleId: number): Promise<void> {
  const read = await noteSheetRead({ puzzleId, memberId, ...WISH });
  if (!read.ok) throw new Error(read.reason.code);
}

async function namesOn(puzzleId: number): Promise<[string, boolean][]> {
  const shown = await showSheet({ puzzleId, ...WISH });
  if (!shown.ok) throw new Error(shown.reason.code);
  return shown.value.sheet.names.map((one) => [one.name, one.beside.includes('put right')]);
}

async function regrade({ puzzleId, memberId, answers }: Built): Promise<void> {
  await ruleForBoAndCy(puzzleId, memberId);
  await ruleAgainstAda(puzzleId, memberId);
  await askRegrade({ puzzleId, memberId, reason: 'again' });
  const open = await loadOpenRegrade(db(), puzzleId);
  await runRegrade(open?.id ?? 0);
  await agreeToRegrade({ puzzleId, memberId, regradeId: open?.id ?? 0, round: 1, agreed: [answers.Ada] });
  expect(await runRegrade(open?.id ?? 0)).toBe('applied');
}

test('[S3] whose mark a regrade raised after the sheet was read comes first on the next, once', async () => {
  const built = await buildMarked();
  await readOut(built, built.puzzleId);
  await regrade(built);
  expect(await marksOf(built.puzzleId)).toMatchObject({ Ada: 'wrong 0', Bo: 'solved 5', Cy: 'solved 5' });
  const next = await nextPuzzle(built, ['Ada', 'Di', 'Bo']);
  // Cy did not solve the next one and is put right all the same; Ada fell, which is no correction to boast of.
  expect(await namesOn(next)).toEqual([
    ['Bo', true],
    ['Cy', true],
    ['Ada', false],
    ['Di', false],
  ]);
  await readOut(built, next);
  const afterThat = await nextPuzzle(built, ['Bo', 'Cy']);
  expect(await namesOn(afterThat)).toEqual([
    ['Bo', false],
    ['Cy', false],
  ]);
});

test('[S3] the same after an overrule; a mark that rose before the sheet was read was read out right', async () => {
  const built = await buildMarked();
  const { answers, memberId, puzzleId } = built;
  const word = { outcome: 'solved', points: 5, why: 'it is enough', memberId } as const;
  await overruleMark({ ...word, answerId: answers.Bo });
  await readOut(built, puzzleId);
  await overruleMark({ ...word, answerId: answers.Cy });
  await overruleMark({ ...word, answerId: answers.Di, outcome: 'unfinished', points: 3 });
  const next = await nextPuzzle(built, ['Bo', 'Cy', 'Di']);
  expect((await namesOn(next)).filter(([, isPutRight]) => isPutRight)).toEqual([['Cy', true]]);
});

test("[S3] a mark that only stood beside the host's word when the sheet was read is not what was read out", async () => {
  const built = await buildMarked({ isRevealed: false });
  const { answers, memberId, puzzleId } = built;
  const word = { outcome: 'solved', points: 5, why: 'it is enough', memberId } as const;
  await overruleMark({ ...word, answerId: answers.Eve });
  await gradeAgain(db(), { id: puzzleId }, { answers: 'all', reason: 'again', memberId });
  await markAnswers({ puzzleId });
  await readOut(built, puzzleId);
  await overruleMark({ ...word, answerId: answers.Eve, why: 'still' });
  const next = await nextPuzzle(built, ['Eve']);
  expect(await namesOn(next)).toEqual([['Eve', false]]);
});

test('[S3] nobody is put right of a sheet that was never read, of a void puzzle, or under a hidden name', async () => {
  const unread = await buildMarked();
  await regrade(unread);
  const first = await nextPuzzle(unread, ['Bo']);
  expect(await namesOn(first)).toEqual([['Bo', false]]);

  const built = await buildMarked();
  await readOut(built, built.puzzleId);
  await regrade(built);
  const next = await nextPuzzle(built, ['Di']);
  await db().solver.updateMany({
    where: { showId: built.showId, name: 'Cy' },
    data: { nameHiddenAt: new Date() },
  });
  expect(await namesOn(next)).toEqual([
    ['Bo', true],
    ['Di', false],
  ]);
  await db().$executeRaw`update puzzle set voided_at = clock_timestamp() where id = ${built.puzzleId}`;
  expect(await namesOn(next)).toEqual([['Di', false]]);
});
