import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { importComments, takeInComments } from '#lib/usecases/answers/import-comments.ts';
import { previewComments, uploadFormatOf } from '#lib/usecases/answers/preview-comments.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

const frame = { exportedAt: new Date('2026-11-28T12:00:00Z'), zone: 'UTC' };
const bytes = (text: string) => new TextEncoder().encode(text);

test('[P2] the preview shows what is read of each comment, and stores nothing', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow());
  const text = 'author,text,time\nAnn,Turm a8 matt,2 days ago\nBee,nice video,\nCid,,\nDot,Ra7,soon';
  const read = await previewComments({
    puzzleId,
    sourceName: 'Video',
    bytes: bytes(text),
    format: 'csv',
    columns: null,
    frame,
  });
  if (!read.ok) throw new Error(read.reason.code);
  expect(
    read.value.rows.map((row) => [
      row.author,
      row.kind,
      row.line?.map((move) => move.uci) ?? null,
      row.isKnown,
    ]),
  ).toEqual([
    ['Ann', 'answer', ['a1a8'], false],
    ['Bee', 'chatter', null, false],
  ]);
  expect(read.value).toMatchObject({
    comments: 2,
    withoutTime: 1,
    refusedCount: 2,
    refused: [
      { code: 'no-text', row: 4 },
      { code: 'bad-time', row: 5 },
    ],
  });
  expect([await db().import.count(), await db().comment.count(), await db().answer.count()]).toEqual([
    0, 0, 0,
  ]);
});

test('[T3] comments that were taken in before are marked as known, within their source', async () => {
  const show = await buildShow();
  const { puzzleId } = await buildPuzzle(show);
  const { showId, memberId } = show;
  const upload = { bytes: bytes('Ann\nRa8#'), format: 'pasted' as const, columns: null };
  const stored = await importComments({
    ...upload,
    puzzleId,
    showId,
    memberId,
    sourceName: 'Video',
    fileName: null,
    timeWord: 'before',
    exportedAt: null,
    zone: 'UTC',
  });
  await takeInComments(stored.ok ? stored.value : 0);
  const knownAt = async (sourceName: string): Promise<boolean | undefined> => {
    const read = await previewComments({ ...upload, puzzleId, sourceName, frame });
    return read.ok ? read.value.rows[0]?.isKnown : undefined;
  };
  expect([await knownAt('Video'), await knownAt('Forum')]).toEqual([true, false]);
});

test('[A20] a large file is read to its end and shown in its first 200 rows; damage at the end refuses it', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow());
  const rows = Array.from({ length: 1000 }, (_, place) => `Ann ${place},Ra8#`).join('\n');
  const asked = { puzzleId, sourceName: 'Video', format: 'csv' as const, columns: null, frame };
  const read = await previewComments({ ...asked, bytes: bytes(`author,text\n${rows}`) });
  expect(read.ok ? [read.value.comments, read.value.rows.length] : read.reason).toEqual([1000, 200]);
  const broken = await previewComments({ ...asked, bytes: bytes(`author,text\n${rows}\nBee,"x`) });
  expect(broken).toEqual({ ok: false, reason: { code: 'open-quote', row: 1002 } });
});

test('[A20] the format follows from the name, else from the beginning', () => {
  expect(uploadFormatOf('x.jsonl', '')).toBe('jsonl');
  expect(uploadFormatOf('x.csv', 'author,text')).toBe('csv');
});
