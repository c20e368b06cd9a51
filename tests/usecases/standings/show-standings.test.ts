import { beforeAll, describe, expect, test } from 'vitest';
import { rankRows } from '#lib/standings/rank-rows.ts';
import { db } from '#lib/store/client.ts';
import { type ShownStandings, showStandings } from '#lib/usecases/standings/show-standings.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { accepted, refused } from '../../support/positions.ts';

givenDatabase();

const SOLVERS = 230;

/** Points of a made-up mark: many ties on purpose. */
function pointsOf(solver: number, puzzle: number): number {
  return (solver * 7 + puzzle * 3) % 6;
}

let place: { showId: number; seasonId: number; episodeId: number };
let hidden = 0;

async function addMarks(puzzleId: number, ordinal: number, solverIds: readonly number[]): Promise<void> {
  for (const [i, solverId] of solverIds.entries()) {
    const points = pointsOf(i, ordinal);
    const answer = await db().answer.create({
      data: {
        puzzleId,
        solverId,
        text: 'Ra8',
        channel: 'page',
        clientKey: `key-${puzzleId}-${solverId}`,
        receiptHash: `hash-${puzzleId}-${solverId}`,
        standing: 'counted',
        work: 'done',
      },
    });
    await db().mark.create({
      data: {
        answerId: answer.id,
        puzzleId,
        solverId,
        outcome: points === 5 ? 'solved' : 'unfinished',
        points,
        p: 1,
        r: 1,
        hasLine: false,
        verdicts: [],
        reason: {},
        scheme: 'full-line',
        schemeVersion: 1,
        readerVersion: 1,
        bookVersion: '',
        madeBy: 'program',
      },
    });
  }
}

beforeAll(async () => {
  place = await buildShow();
  const solvers = await db().solver.createManyAndReturn({
    data: Array.from({ length: SOLVERS }, (_, i) => ({
      showId: place.showId,
      name: i === 0 ? null : `Solver ${i}`,
    })),
  });
  const ids = solvers.map((one) => one.id);
  hidden = ids[1] ?? 0;
  await db().$executeRaw`update solver set name_hidden_at = now() where id = ${hidden}`;
  for (const ordinal of [1, 2]) {
    const { puzzleId } = await buildPuzzle(place, { opens: -60, closes: -30 });
    await addMarks(puzzleId, ordinal, ids);
    await db().$executeRaw`update puzzle set revealed_at = now() where id = ${puzzleId}`;
  }
  // Neither of these may count: one is not revealed, one is void.
  const closed = await buildPuzzle(place, { opens: -60, closes: -30 });
  await addMarks(closed.puzzleId, 3, ids.slice(0, 5));
  const voided = await buildPuzzle(place, { opens: -60, closes: -30 });
  await addMarks(voided.puzzleId, 4, ids.slice(0, 5));
  await db()
    .$executeRaw`update puzzle set revealed_at = now(), voided_at = now() where id = ${voided.puzzleId}`;
});

async function allPages(): Promise<ShownStandings[]> {
  const pages: ShownStandings[] = [];
  for (let after: ShownStandings['next'] = null; ; ) {
    const page: ShownStandings = accepted(await showStandings({ ...(after === null ? {} : { after }) }));
    pages.push(page);
    after = page.next;
    if (after === null) return pages;
  }
}

describe('[S1] standings', () => {
  test('pages by key cover everybody once, ranked as the core ranks them', async () => {
    const pages = await allPages();
    expect(pages.map((page) => page.rows.length)).toEqual([100, 100, 30]);
    const rows = pages.flatMap((page) => page.rows);
    const expected = rankRows(rows.map(({ solverId, points, solved }) => ({ solverId, points, solved })));
    expect(rows.map(({ rank, solverId, isShared }) => ({ rank, solverId, isShared }))).toEqual(
      expected.map(({ rank, solverId, isShared }) => ({ rank, solverId, isShared })),
    );
    expect(pages.every((page) => page.solvers === SOLVERS)).toBe(true);
  });

  test('sums are those of the marks that count: nothing before a reveal, nothing of a void puzzle', async () => {
    const rows = (await allPages()).flatMap((page) => page.rows);
    const sum = rows.reduce((total, row) => total + row.points, 0);
    const expected = Array.from({ length: SOLVERS }, (_, i) => pointsOf(i, 1) + pointsOf(i, 2));
    expect(sum).toBe(expected.reduce((total, points) => total + points, 0));
    expect(rows[0]?.points).toBe(Math.max(...expected));
  });

  test('a name that was not given or is hidden does not stand there', async () => {
    const rows = (await allPages()).flatMap((page) => page.rows);
    expect(rows.filter((row) => row.name === null)).toHaveLength(2);
    expect(rows.find((row) => row.solverId === hidden)?.name).toBeNull();
  });

  test('an episode has standings of its own; an unknown one is refused', async () => {
    const shown = accepted(await showStandings({ episode: place.episodeId }));
    expect(shown.scope).toMatchObject({ kind: 'episode', id: place.episodeId });
    expect(shown.choices.map((choice) => choice.kind)).toEqual(['season', 'episode']);
    expect(refused(await showStandings({ episode: 999_999 }))).toEqual({ code: 'unknown-standings' });
  });
});
