import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { settleDoubtful } from '#lib/usecases/answers/settle-doubtful.ts';
import { showDoubtful } from '#lib/usecases/answers/show-doubtful.ts';
import { undoSettlement } from '#lib/usecases/answers/undo-settlement.ts';
import { buildShow } from '../../support/build-show.ts';
import { buildHealey, markEverything, send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

test('[A3] only the word of that reason is taken back, and only once', async () => {
  const { memberId, ...place } = await buildShow();
  const { slug, puzzleId, terms } = await buildHealey({ place });
  for (const text of ['Nxx5+', 'Rxx']) await send(slug, text);
  await markEverything(puzzleId, terms);
  for (const why of ['first', 'second']) {
    const shown = await showDoubtful({ puzzleId, doubt: null });
    const doubt = shown.ok ? (shown.value.question?.doubt ?? '') : '';
    await settleDoubtful({
      puzzleId,
      memberId,
      why,
      doubt,
      settlement: { kind: 'outcome', outcome: 'chatter', points: 0 },
    });
  }
  expect(await undoSettlement({ puzzleId, memberId, why: 'second' })).toEqual({ ok: true, value: 1 });
  expect(await undoSettlement({ puzzleId, memberId, why: 'second' })).toEqual({
    ok: false,
    reason: { code: 'nothing-to-undo' },
  });
  await markEverything(puzzleId, terms);
  const current = await db().mark.findMany({
    where: { puzzleId, isCurrent: true },
    orderBy: { answerId: 'asc' },
  });
  expect(current.map((mark) => mark.madeBy).sort()).toEqual(['person', 'program']);
  expect(await db().mark.count({ where: { puzzleId } })).toBe(5);
});
