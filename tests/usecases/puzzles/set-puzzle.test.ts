import { describe, expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { loadPublishedLines, loadPuzzle } from '#lib/store/puzzles.ts';
import { momentOf, puzzleTerms, setPuzzle, type TypedPuzzle } from '#lib/usecases/puzzles/set-puzzle.ts';
import { BACK_RANK, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

async function typed(more: Partial<TypedPuzzle> = {}): Promise<TypedPuzzle> {
  const { showId, memberId } = await buildShow();
  return {
    showId,
    memberId,
    episodeNumber: 42,
    episodeTitle: 'Back ranks',
    title: 'White to play and mate in one',
    terms: puzzleTerms({ fen: BACK_RANK, task: { kind: 'mate', moves: 1 }, published: ['Ra8#', ' '] }),
    opensAt: '2026-11-20T18:00',
    closesAt: '2026-11-27T18:00',
    zone: 'Europe/Vienna',
    howFar: '',
    ...more,
  };
}

describe('[P2] a typed puzzle', () => {
  test('[P2] becomes a draft with moments in UTC, its verification waiting, its episode made', async () => {
    const set = await setPuzzle(await typed({ howFar: 'To the mate.' }));
    if (!set.ok) throw new Error(set.reason.code);
    const stored = await loadPuzzle(db(), { id: set.value });
    expect(stored?.opensAt?.toISOString()).toBe('2026-11-20T17:00:00.000Z');
    expect(stored?.closesAt?.toISOString()).toBe('2026-11-27T17:00:00.000Z');
    expect([stored?.episode.number, stored?.episode.title, stored?.howFar]).toEqual([
      42,
      'Back ranks',
      'To the mate.',
    ]);
    expect([stored?.verifiedAt, stored?.publishedAt]).toEqual([null, null]);
    expect(await loadPublishedLines(db(), set.value)).toEqual(['Ra8#']);
    const jobs = await db().$queryRaw<
      unknown[]
    >`select 1 from graphile_worker.jobs where key = ${`verify-puzzle:${set.value}`}`;
    expect(jobs).toHaveLength(1);
  });

  test('[P2] a second puzzle of the same episode joins it and keeps its title', async () => {
    const one = await typed();
    await setPuzzle(one);
    await setPuzzle({ ...one, episodeTitle: 'Another title' });
    const episodes = await db().episode.findMany({ where: { showId: one.showId, number: 42 } });
    expect(episodes.map((episode) => episode.title)).toEqual(['Back ranks']);
  });

  test('[V9] a draft is changed in place: words at once, other terms verified again', async () => {
    const one = await typed();
    const set = await setPuzzle(one);
    const puzzleId = set.ok ? set.value : 0;
    await db().puzzle.update({ where: { id: puzzleId }, data: { verifiedAt: new Date(), claim: 'true' } });
    const words = {
      ...one,
      puzzleId,
      title: 'Another title',
      countsFirst: true,
      closesAt: '2026-11-28T18:00',
    };
    expect(await setPuzzle(words)).toEqual({ ok: true, value: puzzleId });
    const renamed = await loadPuzzle(db(), { id: puzzleId });
    expect([renamed?.title, renamed?.countsFirst, renamed?.claim]).toEqual(['Another title', true, 'true']);
    expect(renamed?.closesAt?.toISOString()).toBe('2026-11-28T17:00:00.000Z');
    const terms = puzzleTerms({ fen: BACK_RANK, task: { kind: 'mate', moves: 2 } });
    await setPuzzle({ ...words, terms });
    const other = await loadPuzzle(db(), { id: puzzleId });
    expect([other?.task, other?.claim]).toEqual([{ kind: 'mate', moves: 2 }, null]);
    expect(await db().puzzle.count({ where: { showId: one.showId } })).toBe(1);
  });

  const refused: [string, Partial<TypedPuzzle>, string][] = [
    ['no position', { terms: puzzleTerms({ fen: 'x', task: { kind: 'win' } }) }, 'fen'],
    [
      'a mate in 31',
      { terms: puzzleTerms({ fen: BACK_RANK, task: { kind: 'mate', moves: 31 } }) },
      'mate-moves',
    ],
    [
      'a draw without an end',
      { terms: puzzleTerms({ fen: BACK_RANK, task: { kind: 'draw' } }) },
      'draw-needs-end',
    ],
    ['no title', { title: '  ' }, 'title-empty'],
    ['an endless title', { title: 'x'.repeat(121) }, 'title-too-long'],
    ['episode 0', { episodeNumber: 0 }, 'episode-number'],
    ['episode one and a half', { episodeNumber: 1.5 }, 'episode-number'],
    ['an unknown zone', { zone: 'Moon/Base' }, 'zone'],
    ['no close', { closesAt: '' }, 'time'],
    ['a close at the opening', { closesAt: '2026-11-20T18:00' }, 'close-not-after-opening'],
    ['an hour that the night skips', { opensAt: '2026-03-29T02:30' }, 'time-skipped'],
  ];
  test.each(refused)('[P2] %s is refused and nothing is stored', async (_why, more, code) => {
    const one = await typed(more);
    const set = await setPuzzle(one);
    expect(set.ok ? 'ok' : set.reason.code).toBe(code);
    expect(await db().puzzle.count({ where: { showId: one.showId } })).toBe(0);
  });

  test('[P2] of an hour that the night repeats the opening takes the first, the close the second', () => {
    const at = (field: 'opensAt' | 'closesAt'): string => {
      const moment = momentOf('2026-10-25T02:30', field, 'Europe/Vienna');
      return moment.ok ? moment.value.toISOString() : moment.reason.code;
    };
    expect([at('opensAt'), at('closesAt')]).toEqual(['2026-10-25T00:30:00.000Z', '2026-10-25T01:30:00.000Z']);
  });
});
