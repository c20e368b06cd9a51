import { describe, expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { changeDraft } from '#lib/usecases/puzzles/change-draft.ts';
import { publishPuzzle } from '#lib/usecases/puzzles/publish-puzzle.ts';
import { buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { jobsOf, loggedOf } from '../../support/deeds.ts';
import { accepted, refused } from '../../support/positions.ts';

givenDatabase();

/** A puzzle as verification would leave it. */
async function verified({
  claim = 'true',
  outcomes = ['solved'],
  ...times
}: {
  claim?: string;
  outcomes?: readonly string[];
  opens?: number;
  closes?: number;
} = {}) {
  const { puzzleId } = await buildPuzzle(await buildShow(), { ...times, isPublished: false });
  const report = { v: 1, publishedLines: outcomes.map((outcome) => ({ outcome })) };
  await db().puzzle.update({ where: { id: puzzleId }, data: { claim, report, engineVersion: 'test' } });
  await db().$executeRaw`update puzzle set verified_at = clock_timestamp() where id = ${puzzleId}`;
  return puzzleId;
}

const publish = (puzzleId: number, overrideReason: string | null = null) =>
  publishPuzzle({ puzzleId, memberId: null, overrideReason });

describe('publishing', () => {
  test('a verified puzzle whose opening has come is open at once, its close is planned, and it is logged', async () => {
    const puzzleId = await verified();
    expect(accepted(await publish(puzzleId))).toBe('open');
    const stored = await loadPuzzle(db(), { id: puzzleId });
    expect((await jobsOf(puzzleId)).get('close-puzzle')).toEqual(stored?.closesAt);
    expect(await loggedOf(puzzleId)).toEqual([['puzzle-published', { claim: 'true', overridden: false }]]);
  });

  test('two hosts at once: one publishes, the other is told, and a change of the draft meanwhile is refused', async () => {
    const puzzleId = await verified();
    const change = changeDraft({ puzzleId, memberId: null, terms: { ...MATE_IN_ONE, mateWritten: true } });
    const done = await Promise.all([publish(puzzleId), publish(puzzleId), change]);
    expect(done.filter(({ ok }) => ok)).toHaveLength(1);
    expect(await loggedOf(puzzleId)).toHaveLength(1);
  });

  test('ahead of its opening it is published and not open', async () => {
    expect(accepted(await publish(await verified({ opens: 30 })))).toBe('published');
  });

  test('times that are given now replace the stored ones', async () => {
    const puzzleId = await verified({ opens: -120, closes: -60 });
    expect(refused(await publish(puzzleId)).code).toBe('close-is-past');
    const closesAt = new Date(Date.now() + 7_200_000);
    const deed = { puzzleId, memberId: null, overrideReason: null, closesAt };
    expect(accepted(await publishPuzzle(deed))).toBe('open');
    expect((await loadPuzzle(db(), { id: puzzleId }))?.closesAt).toEqual(closesAt);
  });

  test('[A5] a claim proved false is not published, whatever the reason', async () => {
    const puzzleId = await verified({ claim: 'false' });
    expect(refused(await publish(puzzleId, 'We like it.')).code).toBe('claim-false');
    expect((await loadPuzzle(db(), { id: puzzleId }))?.publishedAt).toBeNull();
    expect(await loggedOf(puzzleId)).toEqual([]);
  });

  test('[A5] an unclear claim wants a reason: its words stay with the puzzle, the log says that there was one', async () => {
    const puzzleId = await verified({ claim: 'unclear' });
    expect(refused(await publish(puzzleId)).code).toBe('claim-unclear-without-reason');
    expect(refused(await publish(puzzleId, '  ')).code).toBe('claim-unclear-without-reason');
    expect(accepted(await publish(puzzleId, 'Known since 1861.'))).toBe('open');
    const stored = await db().puzzle.findUniqueOrThrow({ where: { id: puzzleId } });
    expect(stored.claimOverride).toBe('Known since 1861.');
    expect(await loggedOf(puzzleId)).toEqual([['puzzle-published', { claim: 'unclear', overridden: true }]]);
  });

  test('[V9] a published line that fails its own marking wants a reason too', async () => {
    const puzzleId = await verified({ outcomes: ['solved', 'wrong'] });
    expect(refused(await publish(puzzleId))).toMatchObject({ code: 'published-line-fails', lines: 1 });
    expect(accepted(await publish(puzzleId, 'The second is a joke.'))).toBe('open');
  });

  test('what was never verified, is published already or is not there is refused', async () => {
    const { puzzleId } = await buildPuzzle(await buildShow(), { isPublished: false });
    expect(refused(await publish(puzzleId)).code).toBe('not-verified');
    const twice = await verified();
    await publish(twice);
    expect(refused(await publish(twice)).code).toBe('wrong-state');
    expect(refused(await publish(987_654)).code).toBe('unknown-puzzle');
  });
});
