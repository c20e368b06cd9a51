// Builders for database tests: a show, an episode, a puzzle in any state, without the engine.

import type { PuzzleTerms } from '#lib/book/terms.ts';
import { DEFAULT_TERMS } from '#lib/book/terms.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { db } from '#lib/store/client.ts';
import { createPuzzleRow } from '#lib/store/puzzles.ts';

/** White mates in one: Ra8. From this file's own hand. */
export const BACK_RANK = '6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - 0 1';

export const MATE_IN_ONE: PuzzleTerms = {
  ...DEFAULT_TERMS,
  fen: BACK_RANK,
  task: { kind: 'mate', moves: 1 },
  published: ['Ra8#'],
};

/** A show with a season, an episode and its owner. */
export async function buildShow() {
  const show = await db().show.create({ data: { name: 'The Test Board' } });
  const season = await db().season.create({ data: { showId: show.id, number: 1, name: 'First' } });
  const episode = await db().episode.create({
    data: { showId: show.id, seasonId: season.id, number: 1, title: 'One' },
  });
  const member = await db().member.create({
    data: { showId: show.id, signInName: `owner${show.id}`, passwordHash: 'none', role: 'owner' },
  });
  return { showId: show.id, seasonId: season.id, episodeId: episode.id, memberId: member.id };
}

let count = 0;

/** A puzzle that is open from an hour ago until in an hour, unless told otherwise in minutes from now. */
export async function buildPuzzle(
  place: { showId: number; episodeId: number },
  {
    terms = MATE_IN_ONE,
    opens = -60,
    closes = 60,
    isPublished = true,
  }: { terms?: PuzzleTerms; opens?: number; closes?: number; isPublished?: boolean } = {},
) {
  count += 1;
  const slug = `puzzle${process.pid}x${count}`;
  const puzzleId = await createPuzzleRow(db(), {
    ...place,
    slug,
    title: 'A test puzzle',
    terms,
    opensAt: null,
    closesAt: null,
    zone: 'UTC',
    memberId: null,
  });
  await db().$executeRaw`
    update puzzle set opens_at = clock_timestamp() + make_interval(mins => ${opens}::int),
      closes_at = clock_timestamp() + make_interval(mins => ${closes}::int) where id = ${puzzleId}`;
  if (isPublished)
    await db().$executeRaw`
      update puzzle set verified_at = clock_timestamp(), claim = 'true', engine_version = ${ENGINE_VERSION},
        published_at = clock_timestamp() where id = ${puzzleId}`;
  return { puzzleId, slug };
}
