import { describe, expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { loadOpenRegrade } from '#lib/store/regrades.ts';
import { askRegrade } from '#lib/usecases/answers/decide-regrade.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { retryParked } from '#lib/usecases/answers/retry-parked.ts';
import { runRegrade } from '#lib/usecases/answers/run-regrade.ts';
import { settleDoubtful } from '#lib/usecases/answers/settle-doubtful.ts';
import { showDoubtful } from '#lib/usecases/answers/show-doubtful.ts';
import { showMark } from '#lib/usecases/answers/show-mark.ts';
import { openDeskPuzzle } from '#lib/usecases/puzzles/open-desk-puzzle.ts';
import { buildShow } from '../../support/build-show.ts';
import { buildHealey, markEverything, revealNow, send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';
import { jobsOf, loggedOf } from '../../support/deeds.ts';
import { accepted, refused } from '../../support/positions.ts';

givenDatabase();

/** Damages the verdict on 1.Qd6+, so that whoever comes there fails; gives a way to mend it. */
async function damage(puzzleId: number): Promise<() => Promise<void>> {
  const [row] = await db().$queryRaw<{ id: number; evidence: string }[]>`
    select id, evidence::text as evidence from book_row where puzzle_id = ${puzzleId} and move = 'g6d6'`;
  const change = async (evidence: string) => {
    await db().$executeRaw`alter table book_row disable trigger book_row_is_kept`;
    await db().$executeRaw`update book_row set evidence = ${evidence}::jsonb where id = ${row?.id}`;
    await db().$executeRaw`alter table book_row enable trigger book_row_is_kept`;
    // The kept book is loaded anew.
    await db()
      .$executeRaw`update puzzle set opens_at = opens_at + interval '1 second' where id = ${puzzleId}`;
  };
  await change('{"kind":"search"}');
  return () => change(row?.evidence ?? '');
}

async function parked() {
  const { memberId, ...place } = await buildShow();
  const puzzle = await buildHealey({ place });
  const mend = await damage(puzzle.puzzleId);
  const poison = await send(puzzle.slug, '1.Qd6+', { name: 'Poison' });
  const other = await send(puzzle.slug, '1.Rh1 Bd7 2.Qb1', { name: 'Other' });
  await markEverything(puzzle.puzzleId, puzzle.terms);
  return { ...puzzle, memberId, mend, poison, other };
}

async function outcomeOf(answerId: number): Promise<string | null> {
  return (await db().mark.findFirst({ where: { answerId, isCurrent: true } }))?.outcome ?? null;
}

describe('[F11] an answer that cannot be marked', () => {
  test('[F11] is given up after three tries, needs the host, and holds nobody else up', async () => {
    const { puzzleId, showId, poison, other } = await parked();
    expect(await outcomeOf(other.answerId)).toBe('solved');
    expect(await outcomeOf(poison.answerId)).toBe('unclear');
    const answer = await db().answer.findUniqueOrThrow({ where: { id: poison.answerId } });
    expect([answer.work, answer.tries, answer.text]).toEqual(['parked', 3, '1.Qd6+']);
    const shown = accepted(await showDoubtful({ puzzleId, doubt: null }));
    expect(shown.waiting.map((group) => [group.kind, group.answers])).toEqual([['parked', 1]]);
    expect(shown.question?.text).toBe('1.Qd6+');
    expect(shown.question?.candidates[0]?.id).toBe('again');
    expect(await openDeskPuzzle(showId, puzzleId)).toMatchObject({ doubtful: 1 });
    const mark = await showMark({ puzzleId, answerId: poison.answerId, locale: 'en' });
    expect(mark?.explanation).toContain('could not be marked by the program');
  });

  test('[F11] "try again" marks it once the cause is gone; before, it is parked again', async () => {
    const { puzzleId, memberId, mend, poison } = await parked();
    expect(accepted(await retryParked({ puzzleId, memberId }))).toBe(1);
    expect((await jobsOf(puzzleId)).has('mark-answers')).toBe(true);
    expect(await loggedOf(puzzleId)).toContainEqual(['marking-retried', { answers: [poison.answerId] }]);
    await markAnswers({ puzzleId });
    expect(await outcomeOf(poison.answerId)).toBe('unclear');
    await mend();
    accepted(await retryParked({ puzzleId, memberId }));
    await markAnswers({ puzzleId });
    expect(await outcomeOf(poison.answerId)).toBe('wrong');
    expect(accepted(await showDoubtful({ puzzleId, doubt: null })).waiting).toEqual([]);
    expect(refused(await retryParked({ puzzleId, memberId }))).toEqual({ code: 'group-empty' });
  });

  test('[A7] after the reveal too it gets its mark by itself', async () => {
    const { puzzleId, memberId, mend, poison } = await parked();
    await revealNow(puzzleId);
    await mend();
    accepted(await retryParked({ puzzleId, memberId }));
    await markAnswers({ puzzleId });
    expect(await outcomeOf(poison.answerId)).toBe('wrong');
  });

  test('[F11] a regrade leaves it alone: trying it might end the worker that writes everybody’s marks', async () => {
    const { puzzleId, memberId, mend, poison } = await parked();
    await revealNow(puzzleId);
    await mend();
    accepted(await askRegrade({ puzzleId, memberId, reason: 'all again' }));
    const regrade = await loadOpenRegrade(db(), puzzleId);
    await runRegrade(regrade?.id ?? 0);
    const stored = (await loadOpenRegrade(db(), puzzleId))?.stored;
    expect([stored?.unjudged, stored?.preview.changes]).toEqual([1, []]);
    expect(await outcomeOf(poison.answerId)).toBe('unclear');
  });

  test('[F11] nor does everything that is marked again before the reveal try it: three tries are three', async () => {
    const { puzzleId, memberId, poison } = await parked();
    accepted(await askRegrade({ puzzleId, memberId, reason: 'all again' }));
    await markAnswers({ puzzleId });
    const answer = await db().answer.findUniqueOrThrow({ where: { id: poison.answerId } });
    expect([answer.work, answer.tries]).toEqual(['parked', 3]);
    expect(await db().mark.count({ where: { answerId: poison.answerId } })).toBe(1);
  });

  test('[A3] or the host says what it earns, and that stays when it is tried again', async () => {
    const { puzzleId, memberId, mend, poison } = await parked();
    const doubt = accepted(await showDoubtful({ puzzleId, doubt: null })).question?.doubt ?? '';
    const settlement = { kind: 'outcome', outcome: 'unfinished', points: null } as const;
    accepted(await settleDoubtful({ puzzleId, doubt, settlement, why: 'seen by eye', memberId }));
    await mend();
    accepted(await retryParked({ puzzleId, memberId }));
    await markAnswers({ puzzleId });
    expect(await outcomeOf(poison.answerId)).toBe('unfinished');
  });
});
