import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { noteSheetRead } from '#lib/usecases/readout/note-sheet-read.ts';
import { buildShow } from '../../support/build-show.ts';
import { buildHealey } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

test('[S3] a sheet without names is noted with none; an unknown puzzle notes nothing', async () => {
  const { memberId, ...place } = await buildShow();
  const { puzzleId } = await buildHealey({ place });
  const wish = { memberId, locale: 'en', length: 30, wordsAMinute: 150 } as const;
  expect(await noteSheetRead({ puzzleId, ...wish })).toEqual({ ok: true, value: 0 });
  expect((await db().log.findFirstOrThrow({ where: { kind: 'sheet-read' } })).details).toEqual({
    solvers: [],
  });
  expect(await noteSheetRead({ puzzleId: 999_999, ...wish })).toEqual({
    ok: false,
    reason: { code: 'unknown-puzzle' },
  });
  expect(await db().log.count({ where: { kind: 'sheet-read' } })).toBe(1);
});
