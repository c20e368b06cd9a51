import { describe, expect, test } from 'vitest';
import { createRandom } from '#lib/kit/random.ts';
import { db } from '#lib/store/client.ts';
import {
  type CommentsUpload,
  externalIdOf,
  importComments,
  takeInComments,
} from '#lib/usecases/answers/import-comments.ts';
import { listPuzzleImports } from '#lib/usecases/answers/list-imports.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { buildHealey, markEverything, revealNow } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';
import { accepted } from '../../support/positions.ts';

givenDatabase();

async function open() {
  const show = await buildShow();
  return { ...show, ...(await buildPuzzle(show)) };
}
type Place = Awaited<ReturnType<typeof open>>;

function upload(place: Place, text: string, more: Partial<CommentsUpload> = {}): CommentsUpload {
  return {
    puzzleId: place.puzzleId,
    showId: place.showId,
    memberId: place.memberId,
    sourceName: 'Video page',
    format: 'csv',
    fileName: 'comments.csv',
    bytes: new TextEncoder().encode(text),
    columns: null,
    timeWord: 'unknown',
    exportedAt: null,
    zone: 'UTC',
    ...more,
  };
}

async function taken(place: Place, text: string, more: Partial<CommentsUpload> = {}) {
  const stored = await importComments(upload(place, text, more));
  if (!stored.ok) throw new Error(stored.reason.code);
  await takeInComments(stored.value);
  const [newest] = await listPuzzleImports(place.puzzleId);
  return {
    id: stored.value,
    added: newest?.added,
    known: newest?.known,
    edited: newest?.edited,
    refused: newest?.refused,
  };
}

const FILE =
  'author,text,time\nAnn,Ra8#,2020-01-01T10:00:00Z\nBee,Ra7,2020-01-01T11:00:00Z\nCid,nice video,2020-01-01T12:00:00Z\n';

describe('[T3] the same comments again', () => {
  test('[T3] the first import makes answers, the second adds nothing: 0 new, n known', async () => {
    const place = await open();
    expect(await taken(place, FILE)).toMatchObject({ added: 3, known: 0, edited: 0 });
    const answers = await db().answer.findMany({
      where: { puzzleId: place.puzzleId },
      orderBy: { id: 'asc' },
    });
    expect(answers.map((one) => [one.name, one.text, one.channel])).toEqual([
      ['Ann', 'Ra8#', 'comment'],
      ['Bee', 'Ra7', 'comment'],
      ['Cid', 'nice video', 'comment'],
    ]);
    expect(answers[0]?.statedFrom?.toISOString()).toBe('2020-01-01T10:00:00.000Z');
    expect(await taken(place, FILE)).toMatchObject({ added: 0, known: 3, edited: 0 });
    expect(await db().answer.count({ where: { puzzleId: place.puzzleId } })).toBe(3);
  });

  test('[T3] rows in another order are known too', async () => {
    const place = await open();
    await taken(place, FILE);
    const [head, ...rows] = FILE.trim().split('\n');
    expect(await taken(place, [head, ...rows.reverse()].join('\n'))).toMatchObject({ added: 0, known: 3 });
  });

  test('[T3] another text under a known id is a further version, and the first text stays the answer', async () => {
    const place = await open();
    await taken(place, 'id,author,text\nc1,Ann,Ra8#');
    expect(await taken(place, 'id,author,text\nc1,Ann,Ra7 instead')).toMatchObject({
      added: 0,
      known: 0,
      edited: 1,
    });
    const comments = await db().comment.findMany({
      where: { puzzleId: place.puzzleId },
      orderBy: { version: 'asc' },
    });
    expect(comments.map((one) => [one.version, one.text, one.answerId === null])).toEqual([
      [1, 'Ra8#', false],
      [2, 'Ra7 instead', true],
    ]);
    expect(comments[0]?.externalId).toBe(externalIdOf('id\nc1'));
    expect(
      (await db().answer.findMany({ where: { puzzleId: place.puzzleId } })).map((one) => one.text),
    ).toEqual(['Ra8#']);
  });

  test('[T3] an import taken in twice, or begun again after a kill in the middle, ends the same', async () => {
    const place = await open();
    const first = await taken(place, FILE);
    await takeInComments(first.id);
    await db().$executeRaw`update import set state = 'waiting' where id = ${first.id}`;
    await takeInComments(first.id);
    expect((await listPuzzleImports(place.puzzleId))[0]).toMatchObject({ state: 'done', added: 3, known: 0 });
    expect(await db().answer.count({ where: { puzzleId: place.puzzleId } })).toBe(3);
  });
});

test('[F5] an import whose job is handed out twice at once is told in the log once', async () => {
  const place = await open();
  const stored = await importComments(upload(place, FILE));
  const importId = stored.ok ? stored.value : 0;
  await Promise.all([takeInComments(importId), takeInComments(importId)]);
  await takeInComments(importId);
  expect(await db().answer.count({ where: { puzzleId: place.puzzleId } })).toBe(3);
  const entries = await db().log.findMany({ where: { puzzleId: place.puzzleId, kind: 'comments-imported' } });
  expect(entries.map(({ details }) => details)).toEqual([
    { import: importId, added: 3, known: 0, edited: 0, refused: 0 },
  ]);
});

test('[A20] NUL and halves of signs in JSON are taken in as what they are, unreadable signs', async () => {
  const place = await open();
  const line = (fields: object) =>
    JSON.stringify(fields).replaceAll('HALF', '\\ud83d').replaceAll('NUL', '\\u0000');
  const text = [
    line({ author: 'AnnNUL', text: 'Ra8#NUL', id: 'oneNULHALF' }),
    line({ author: 'BeeHALF', text: 'HALF Ra8#', link: 'https://example.org/NUL' }),
  ].join('\n');
  expect(await taken(place, text, { format: 'jsonl' })).toMatchObject({ added: 2, known: 0 });
  expect(await taken(place, text, { format: 'jsonl' })).toMatchObject({ added: 0, known: 2, edited: 0 });
});

test('[A20] a comment of any length and an author of any length come in, or are named as refused', async () => {
  const place = await open();
  const random = createRandom(7);
  const noise = (length: number) =>
    Array.from({ length }, () => String.fromCodePoint(0x4e00 + random.int(20_000))).join('');
  const text = `author,text,id,link\n${noise(6000)},Ra8#,c1,\nBee,Ra8# ${noise(30_000)},c2,\nCid,Ra8#,${noise(9000)},https://example.org/${noise(9000)}\n`;
  const done = await taken(place, text);
  expect((done.added ?? 0) + Number(done.refused)).toBe(3);
  expect((await db().import.findUniqueOrThrow({ where: { id: done.id } })).state).toBe('done');
});

test('[P2] two imports at once that bring a new author make one person of him', async () => {
  const place = await open();
  const ids: number[] = [];
  for (const text of ['Ra8#', 'Ra7', 'Kf1', 'Kh1']) {
    const stored = await importComments(upload(place, `author,text\nAnn,${text}\n`, { timeWord: 'before' }));
    if (stored.ok) ids.push(stored.value);
  }
  await Promise.all(ids.map((id) => takeInComments(id)));
  const answers = await db().answer.findMany({ where: { puzzleId: place.puzzleId } });
  expect([answers.length, new Set(answers.map((one) => one.solverId)).size]).toEqual([4, 1]);
});

describe('[P2] authors, times and voices', () => {
  test('[P2] one author is one solver within a source, and another in another source', async () => {
    const place = await open();
    await taken(place, 'author,text\nAnn,Ra8#\nAnn,Ra7');
    await taken(place, 'author,text\nAnn,Ra8# again', { sourceName: 'Forum' });
    const solvers = await db().answer.findMany({
      where: { puzzleId: place.puzzleId },
      orderBy: { id: 'asc' },
    });
    expect(new Set(solvers.map((one) => one.solverId)).size).toBe(2);
    expect(solvers[0]?.solverId).toBe(solvers[1]?.solverId);
  });

  test('[P2] comments without an author are people of their own', async () => {
    const place = await open();
    await taken(place, 'text\nRa8#\nRa7');
    const answers = await db().answer.findMany({ where: { puzzleId: place.puzzleId } });
    expect(new Set(answers.map((one) => one.solverId)).size).toBe(2);
  });

  test("[P2] the host's word holds for comments without a time, and for no others", async () => {
    const place = await open();
    await taken(place, 'author,text,time\nAnn,Ra8#,\nBee,Ra7,2020-01-01', { timeWord: 'before' });
    const answers = await db().answer.findMany({
      where: { puzzleId: place.puzzleId },
      orderBy: { id: 'asc' },
    });
    expect(answers.map((one) => [one.timeWord, one.statedFrom === null])).toEqual([
      ['before', true],
      [null, false],
    ]);
  });

  test("[P4] the show's own voice is kept as a comment and is no answer", async () => {
    const place = await open();
    await db().show.update({ where: { id: place.showId }, data: { ownVoices: ['The Test Board'] } });
    expect(await taken(place, 'author,text\nThe Test Board,Ra8# is it')).toMatchObject({ added: 1 });
    expect(await db().answer.count({ where: { puzzleId: place.puzzleId } })).toBe(0);
  });

  test('[A18] a name that cannot be shown is made presentable; the author as written still identifies', async () => {
    const place = await open();
    await taken(place, 'author,text\n\u202eAnn\u200b,Ra8#');
    const answer = await db().answer.findFirstOrThrow({ where: { puzzleId: place.puzzleId } });
    expect(answer.name).toBe('Ann');
  });

  test('[T3] an edited comment first seen after the reveal says so', async () => {
    const place = await open();
    await db()
      .$executeRaw`update puzzle set closes_at = clock_timestamp(), revealed_at = clock_timestamp() where id = ${place.puzzleId}`;
    await taken(place, 'author,text,time\nAnn,Ra8#,2 days ago (edited)');
    const answer = await db().answer.findFirstOrThrow({ where: { puzzleId: place.puzzleId } });
    expect(answer.intakeFlags).toEqual(['edited-unseen']);
  });
});

describe('[A20] what is damaged or foreign stores nothing', () => {
  const refused: [string, string, Partial<CommentsUpload>, string][] = [
    ['a quote that never closes', 'author,text\nAnn,Ra8#\nBee,"Ra7', {}, 'open-quote'],
    ['no row that is a comment', 'author,text\nAnn,', {}, 'no-comments'],
    ['no column for the text', 'author,when\nAnn,now', {}, 'no-text-column'],
    ['nothing', '', {}, 'file-empty'],
  ];
  test.each(refused)('[A20] %s', async (_why, text, more, code) => {
    const place = await open();
    const stored = await importComments(upload(place, text, more));
    expect(stored.ok ? 'ok' : stored.reason.code).toBe(code);
    expect(await db().import.count({ where: { puzzleId: place.puzzleId } })).toBe(0);
  });

  test('[A8] a puzzle of another show, and a draft, take no comments', async () => {
    const [here, there] = [await open(), await open()];
    const foreign = await importComments(upload({ ...here, puzzleId: there.puzzleId }, FILE));
    expect(foreign).toEqual({ ok: false, reason: { code: 'unknown-puzzle' } });
    const draft = await buildPuzzle(here, { isPublished: false });
    expect(await importComments(upload({ ...here, ...draft }, FILE))).toEqual({
      ok: false,
      reason: { code: 'not-published' },
    });
  });

  test('[A20] rows that are no comments are counted and named, the others are taken in', async () => {
    const place = await open();
    expect(await taken(place, 'author,text,time\nAnn,Ra8#,soon\nBee,Ra7,\nCid,,')).toMatchObject({
      added: 1,
      refused: 2,
    });
    const stored = await db().import.findFirstOrThrow({ where: { puzzleId: place.puzzleId } });
    expect(stored.refused).toEqual([
      { code: 'bad-time', row: 2, column: 'time', found: 'soon' },
      { code: 'no-text', row: 4 },
    ]);
  });
});

describe('[A7] comments that come after the reveal', () => {
  const standingsOf = async (puzzleId: number) =>
    (
      await db().answer.findMany({ where: { puzzleId }, orderBy: { id: 'asc' }, include: { marks: true } })
    ).map(({ text, standing, marks }) => [text, standing, marks[0]?.outcome]);

  test('[T3] a later answer of the same person neither raises nor lowers a mark that is public', async () => {
    const { terms, ...place } = await buildHealey();
    const show = { ...place, memberId: 0, seasonId: 0 };
    const at = (minutes: number) => new Date(Date.now() + minutes * 60_000).toISOString();
    const rows = (ann: string, bob: string, minutes: number) =>
      `author,text,time\nAnn,${ann},${at(minutes)}\nBob,${bob},${at(minutes)}\n`;
    await taken(show, rows('1.Rh1 Bd7 2.Qb1', '1.Qd6+', -30), { memberId: null });
    await markEverything(place.puzzleId, terms);
    await db().$executeRaw`
      update puzzle set closes_at = ${new Date(Date.now() - 60_000)}, closed_at = clock_timestamp(),
        revealed_at = clock_timestamp() where id = ${place.puzzleId}`;
    const more = `${rows('1.Qd6+ after all', '1.Rh1 Bd7 2.Qb1 of course', -10)}Cay,1.Rh1,${at(-10)}\n`;
    await taken(show, more, { memberId: null });
    await markEverything(place.puzzleId, terms);
    expect(await standingsOf(place.puzzleId)).toEqual([
      ['1.Rh1 Bd7 2.Qb1', 'counted', 'solved'],
      ['1.Qd6+', 'counted', 'wrong'],
      ['1.Qd6+ after all', 'after-reveal', 'wrong'],
      ['1.Rh1 Bd7 2.Qb1 of course', 'after-reveal', 'solved'],
      ['1.Rh1', 'counted', 'unfinished'],
    ]);
  });

  test('[T3] what was uploaded before the reveal was seen before it, though it is taken in afterwards', async () => {
    const { terms, ...place } = await buildHealey();
    const show = { ...place, memberId: 0, seasonId: 0 };
    const text = (key: string) => `author,text,time\nAnn,${key},2 hours ago (edited)\n`;
    const before = { memberId: null, timeWord: 'before' as const };
    await db().$executeRaw`
      update puzzle set opens_at = opens_at - interval '1 day' where id = ${place.puzzleId}`;
    await taken(show, text('1.Qd6+'), before);
    await markEverything(place.puzzleId, terms);
    const early = await importComments(upload(show, text('1.Rh1 Bd7 2.Qb1'), before));
    await revealNow(place.puzzleId);
    await taken(show, text('1.Qd6+ again'), before);
    await takeInComments(accepted(early));
    await markEverything(place.puzzleId, terms);
    expect(await standingsOf(place.puzzleId)).toEqual([
      ['1.Qd6+', 'replaced', 'wrong'],
      ['1.Qd6+ again', 'after-reveal', 'wrong'],
      ['1.Rh1 Bd7 2.Qb1', 'counted', 'solved'],
    ]);
    const answers = await db().answer.findMany({
      where: { puzzleId: place.puzzleId },
      orderBy: { id: 'asc' },
    });
    expect(answers.map((one) => one.intakeFlags)).toEqual([['edited'], ['edited-unseen'], ['edited']]);
  });
});

test('a time that is none is quoted without half a sign: the import ends all the same', async () => {
  const place = await open();
  const odd = `${'x'.repeat(59)}😀`;
  const done = await taken(place, `author,text,time\nAnn,Ra8#,${odd}\nBee,Ra8#,2020-01-01T10:00:00Z`);
  expect(done.added).toBe(1);
  const stored = await db().import.findUniqueOrThrow({ where: { id: done.id } });
  expect(stored.refused).toMatchObject([{ code: 'bad-time', found: `${'x'.repeat(59)}\ufffd` }]);
});
