import { describe, expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { noteSheetRead } from '#lib/usecases/readout/note-sheet-read.ts';
import { showSheet } from '#lib/usecases/readout/show-sheet.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { buildHealey, markEverything, send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

const WISH = { locale: 'en', length: 60, wordsAMinute: 150 } as const;

async function played() {
  const { memberId, ...place } = await buildShow();
  const puzzle = { memberId, ...place, ...(await buildHealey({ place })) };
  const answers: [string, string][] = [
    ['1.Rh1 Bd7 2.Qb1', 'Ilse Varga'],
    ['1.Rh1 Bd7 2.Qb1', 'IIse Varga'],
    ['1.Rh1 Bd7 2.Qb1', ''],
    ['1.Qb1', 'Bo'],
    ['1.Qb1', 'Cy'],
    ['1.Qd6+', 'Di'],
  ];
  for (const [text, name] of answers) await send(puzzle.slug, text, { name });
  await markEverything(puzzle.puzzleId, puzzle.terms);
  return puzzle;
}

async function sheetOf(puzzleId: number) {
  const shown = await showSheet({ puzzleId, ...WISH });
  if (!shown.ok) throw new Error(shown.reason.code);
  return shown.value;
}

describe('[S3] the sheet of a played puzzle', () => {
  test('[S3] its numbers, trap and names are those of the marks in force', async () => {
    const { puzzleId, memberId } = await played();
    const shown = await sheetOf(puzzleId);
    const part = (kind: string): string | undefined =>
      shown.sheet.parts.find((one) => one.kind === kind)?.text;
    expect(shown.key).toBe('d1h1');
    expect(part('how-you-did')).toBe('Six of you answered; three were right.');
    expect(part('trap')).toMatch(/^Many tried queen to b1: /);
    expect(
      shown.sheet.names.map((one) => [one.name, one.beside.includes('first time'), one.looksLike]),
    ).toEqual([
      ['Ilse Varga', true, null],
      ['IIse Varga', true, 'Ilse Varga'],
    ]);
    expect(shown.text).toContain('Rook to h1.');

    await db().solver.updateMany({ where: { name: 'IIse Varga' }, data: { nameHiddenAt: new Date() } });
    expect((await sheetOf(puzzleId)).sheet.names.map((one) => one.name)).toEqual(['Ilse Varga']);

    expect(await noteSheetRead({ puzzleId, memberId, ...WISH })).toEqual({ ok: true, value: 1 });
    expect((await sheetOf(puzzleId)).isRead).toBe(true);
    const entry = await db().log.findFirstOrThrow({ where: { kind: 'sheet-read', puzzleId } });
    expect(JSON.stringify(entry.details)).not.toContain('Ilse');
  });

  test('[S3] who solved the last one too has a run, and whose name was just read out steps back', async () => {
    const first = await played();
    const ilse = await db().solver.findFirstOrThrow({ where: { showId: first.showId, name: 'Ilse Varga' } });
    await noteSheetRead({ puzzleId: first.puzzleId, memberId: first.memberId, ...WISH, length: 90 });
    const next = await buildHealey({ place: first });
    await send(next.slug, '1.Rh1 Bd7 2.Qb1', { name: 'Ilse Varga', device: 'device-of-ilse' });
    await send(next.slug, '1.Rh1 Bd7 2.Qb1', { name: 'Newcomer' });
    await db()
      .$executeRaw`update answer set solver_id = ${ilse.id} where puzzle_id = ${next.puzzleId} and name = 'Ilse Varga'`;
    await markEverything(next.puzzleId, next.terms);
    const { names } = (await sheetOf(next.puzzleId)).sheet;
    expect(names.map((one) => one.name)).toEqual(['Newcomer', 'Ilse Varga']);
    expect(names[1]?.beside).not.toContain('first time');
  });

  test('[S3] before verification there is no sheet, and none of an unknown puzzle', async () => {
    const { puzzleId } = await buildPuzzle(await buildShow());
    await db().$executeRaw`update puzzle set engine_version = null where id = ${puzzleId}`;
    expect(await showSheet({ puzzleId, ...WISH })).toEqual({
      ok: false,
      reason: { code: 'no-answer-known' },
    });
    expect(await showSheet({ puzzleId: 999_999, ...WISH })).toEqual({
      ok: false,
      reason: { code: 'unknown-puzzle' },
    });
  });
});
