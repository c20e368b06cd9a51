import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { settleTurned } from '#lib/usecases/answers/settle-turned.ts';
import { buildShow } from '../../support/build-show.ts';
import { buildHealey, markEverything, send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

test('[R14] equal texts get one ruling between them, other texts their own, and the log one entry', async () => {
  const { memberId, ...place } = await buildShow();
  const { slug, puzzleId, terms } = await buildHealey({ place });
  for (const text of ['Rg8', 'rg8', 'Rg8 !', 'it must be Rg8']) await send(slug, text);
  await markEverything(puzzleId, terms);
  expect(await settleTurned({ puzzleId, memberId, why: 'seen from Black' })).toMatchObject({ ok: true });
  const rulings = await db().ruling.findMany({ where: { puzzleId, supersededAt: null } });
  expect(rulings.every((one) => one.kind === 'reading' && one.meant.join() === 'd1b1')).toBe(true);
  expect(new Set(rulings.map((one) => one.textHash)).size).toBe(rulings.length);
  expect(rulings.length).toBeGreaterThanOrEqual(2);
  expect(await db().log.count({ where: { kind: 'ruling-made', puzzleId } })).toBe(1);
  expect(await db().answer.count({ where: { puzzleId, work: 'to-mark' } })).toBeGreaterThanOrEqual(3);
});
