import { expect, test } from 'vitest';
import { inTransaction } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { showLog } from '#lib/usecases/people/show-log.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

test('[A8] the log shows the deeds of this show, newest first, and none of another', async () => {
  const here = await buildShow();
  const there = await buildShow();
  const [mine, theirs] = [await buildPuzzle(here), await buildPuzzle(there)];
  await inTransaction(async (tx) => {
    await appendLog(tx, { kind: 'puzzle-created', puzzleId: mine.puzzleId, memberId: here.memberId });
    await appendLog(tx, { kind: 'puzzle-created', puzzleId: theirs.puzzleId, memberId: there.memberId });
    await appendLog(tx, { kind: 'puzzle-revealed', puzzleId: mine.puzzleId, memberId: here.memberId });
    await appendLog(tx, { kind: 'show-changed', memberId: there.memberId });
  });
  const { lines, next } = await showLog({ showId: here.showId, below: null });
  expect(lines.map((line) => [line.kind, line.puzzleId])).toEqual([
    ['puzzle-revealed', mine.puzzleId],
    ['puzzle-created', mine.puzzleId],
  ]);
  expect(lines[0]?.who).toMatch(/^owner/);
  expect(next).toBeNull();
});

test('[A3] a long log comes in pages that join without gap or overlap', async () => {
  const here = await buildShow();
  const { puzzleId } = await buildPuzzle(here);
  await inTransaction(async (tx) => {
    for (let number = 0; number < 130; number += 1) {
      await appendLog(tx, { kind: 'book-extended', puzzleId, details: { rows: number } });
    }
  });
  const first = await showLog({ showId: here.showId, below: null });
  const second = await showLog({ showId: here.showId, below: first.next });
  expect([first.lines.length, second.lines.length, second.next]).toEqual([100, 30, null]);
  const ids = [...first.lines, ...second.lines].map((line) => line.id);
  expect(new Set(ids).size).toBe(130);
  expect([...ids].sort((a, b) => b - a)).toEqual(ids);
});
