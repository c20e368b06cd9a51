// Sample data: a season of its own within the show, marked as such, removed as a whole.

import type { Tx } from './client.ts';

/** How many episodes there are, of any kind. */
export function countEpisodes(tx: Tx): Promise<number> {
  return tx.episode.count();
}

/** Makes a sample season with episodes of these titles, in the oldest show or in a new one. */
export async function createSampleSeason(
  tx: Tx,
  sample: {
    readonly showName: string;
    readonly zone: string;
    readonly season: string;
    readonly titles: readonly string[];
  },
): Promise<{ showId: number; episodeIds: number[] }> {
  const show =
    (await tx.show.findFirst({ orderBy: { id: 'asc' } })) ??
    (await tx.show.create({ data: { name: sample.showName, zone: sample.zone } }));
  const last = await tx.season.aggregate({ where: { showId: show.id }, _max: { number: true } });
  const number = (last._max.number ?? 0) + 1;
  const season = await tx.season.create({
    data: { showId: show.id, number, name: sample.season, isSample: true },
  });
  const episodeIds: number[] = [];
  for (const [place, title] of sample.titles.entries()) {
    const episode = await tx.episode.create({
      data: { showId: show.id, seasonId: season.id, number: place + 1, title, isSample: true },
    });
    episodeIds.push(episode.id);
  }
  return { showId: show.id, episodeIds };
}

/** Removes everything that is marked as sample, the log aside; gives how many episodes that were. */
export async function deleteSample(tx: Tx): Promise<number> {
  const { count } = await tx.episode.deleteMany({ where: { isSample: true } });
  await tx.season.deleteMany({ where: { isSample: true } });
  await tx.solver.deleteMany({ where: { isSample: true } });
  await tx.source.deleteMany({ where: { imports: { none: {} } } });
  return count;
}
