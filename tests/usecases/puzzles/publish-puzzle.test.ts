import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { publishPuzzle } from '#lib/usecases/puzzles/publish-puzzle.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

async function verified(claim: string, lines: string[] = [], when = {}) {
  const { puzzleId } = await buildPuzzle(await buildShow(), { isPublished: false, ...when });
  const report = { v: 1, publishedLines: lines.map((outcome) => ({ outcome })) };
  await db().puzzle.update({ where: { id: puzzleId }, data: { claim, report, verifiedAt: new Date() } });
  return puzzleId;
}

async function publish(puzzleId: number, overrideReason: string | null = null) {
  const done = await publishPuzzle({ puzzleId, memberId: null, overrideReason });
  return done.ok ? done.value : done.reason.code;
}

test('a true claim is published: open where the opening has come, its close put on the list', async () => {
  const puzzleId = await verified('true', ['solved']);
  expect(await publish(puzzleId)).toBe('open');
  const jobs = await db().$queryRaw<{ key: string }[]>`select key from graphile_worker.jobs`;
  expect(jobs.map((job) => job.key)).toContain(`close-puzzle:${puzzleId}`);
  expect(await publish(await verified('true', [], { opens: 30 }))).toBe('published');
});

test('[A5] a false claim cannot be published, whatever reason is given', async () => {
  expect(await publish(await verified('false'), 'I know better')).toBe('claim-false');
});

test('[A5] an unclear claim is published with a reason only, and the log says so', async () => {
  const puzzleId = await verified('unclear');
  expect(await publish(puzzleId)).toBe('claim-unclear-without-reason');
  expect(await publish(puzzleId, 'checked by hand')).toBe('open');
  const entry = await db().log.findFirstOrThrow({ where: { puzzleId, kind: 'puzzle-published' } });
  expect(entry.details).toEqual({ claim: 'unclear', overridden: true });
});

test('[V9] a published line that fails its own marking stops it', async () => {
  expect(await publish(await verified('true', ['solved', 'wrong']))).toBe('published-line-fails');
});

test('a draft, and a puzzle whose close is past, are refused', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow(), { isPublished: false });
  expect(await publish(puzzleId)).toBe('not-verified');
  expect(await publish(await verified('true', [], { closes: -1 }))).toBe('close-is-past');
});
