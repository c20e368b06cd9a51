import { describe, expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { renewStandings } from '#lib/usecases/answers/renew-standings.ts';
import { buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { fillBook, markEverything, send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

/** A puzzle with two answers of one solver and one of another, all marked. */
async function build() {
  const { puzzleId, slug } = await buildPuzzle(await buildShow());
  await fillBook(puzzleId, MATE_IN_ONE);
  const device = `device${puzzleId}`;
  const ids: number[] = [];
  for (const text of ['Kf1', 'Ra8#']) ids.push((await send(slug, text, { device })).answerId);
  ids.push((await send(slug, 'Ra8#')).answerId);
  await markEverything(puzzleId, MATE_IN_ONE);
  const answers = await db().answer.findMany({ where: { id: { in: ids } }, orderBy: { id: 'asc' } });
  const [one = 0, , other = 0] = answers.map((answer) => answer.solverId);
  return { puzzleId, ids, one, other };
}

async function standings(ids: readonly number[]): Promise<string[]> {
  const rows = await db().answer.findMany({ where: { id: { in: [...ids] } }, orderBy: { id: 'asc' } });
  return rows.map((row) => row.standing);
}

describe('[P2] which answer counts', () => {
  test('[P2] is turned round where the first shall count instead of the last, one counting at any moment', async () => {
    const { puzzleId, ids, one, other } = await build();
    expect(await standings(ids)).toEqual(['replaced', 'counted', 'counted']);
    await renewStandings(db(), { id: puzzleId, countsFirst: true }, [one, other]);
    expect(await standings(ids)).toEqual(['counted', 'replaced', 'counted']);
    await renewStandings(db(), { id: puzzleId, countsFirst: false }, [one, other]);
    expect(await standings(ids)).toEqual(['replaced', 'counted', 'counted']);
  });

  test('[P2] is decided for the named solvers alone', async () => {
    const { puzzleId, ids, other } = await build();
    await renewStandings(db(), { id: puzzleId, countsFirst: true }, [other]);
    expect(await standings(ids)).toEqual(['replaced', 'counted', 'counted']);
  });

  test('[P2] follows a close that moved: what came after it is late, and the one before counts again', async () => {
    const { puzzleId, ids, one } = await build();
    await db().$executeRaw`
      update puzzle set closes_at = (select received_at from answer where id = ${ids[1] ?? 0}) where id = ${puzzleId}`;
    await renewStandings(db(), { id: puzzleId, countsFirst: false }, [one]);
    expect((await standings(ids)).slice(0, 2)).toEqual(['counted', 'late']);
  });

  test('a row that is decided as before is not written again', async () => {
    const { puzzleId, ids, one } = await build();
    const versions = () => db().$queryRaw`select xmin::text from answer where id = any(${ids}) order by id`;
    const before = await versions();
    await renewStandings(db(), { id: puzzleId, countsFirst: false }, [one]);
    expect(await versions()).toEqual(before);
  });
});
