import { expect, test } from 'vitest';
import { db, inTransaction } from '#lib/store/client.ts';
import { renewStandings } from '#lib/usecases/answers/renew-standings.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

const MARK = {
  outcome: 'solved',
  flags: [],
  points: 5,
  p: 1,
  r: 1,
  hasLine: false,
  line: [],
  verdicts: [],
  reason: {},
  scheme: 'full-line',
  schemeVersion: 1,
  readerVersion: 1,
  bookVersion: 'mate 1',
  madeBy: 'program',
};

test('[P2] the counted answer passes from one to the other without two counting in between', async () => {
  const { showId, episodeId } = await buildShow();
  const { puzzleId } = await buildPuzzle({ showId, episodeId });
  const { id: solverId } = await db().solver.create({ data: { showId } });
  const ids: number[] = [];
  for (const text of ['Ra8', 'Kf1']) {
    const data = { puzzleId, solverId, text, channel: 'page', clientKey: text };
    const { id } = await db().answer.create({ data });
    await db().mark.create({ data: { ...MARK, answerId: id, puzzleId, solverId } });
    ids.push(id);
  }
  const standings = async () =>
    (await db().answer.findMany({ where: { puzzleId }, orderBy: { id: 'asc' } })).map((one) => one.standing);
  for (const [countsFirst, expected] of [
    [false, ['replaced', 'counted']],
    [true, ['counted', 'replaced']],
    [false, ['replaced', 'counted']],
  ] as const) {
    await inTransaction((tx) => renewStandings(tx, { id: puzzleId, countsFirst }, [solverId]));
    expect(await standings()).toEqual(expected);
  }
});
