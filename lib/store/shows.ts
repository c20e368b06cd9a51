// The show, its seasons and episodes.

import type { Tx } from './client.ts';
import { oneOf } from './one-of.ts';

/** A show as its own pages need it. */
export interface ShowRecord {
  readonly id: number;
  readonly name: string;
  readonly zone: string;
  readonly locale: 'en' | 'de';
  readonly ladderTarget: number | null;
  readonly ownVoices: readonly string[];
}

/** An episode with the number of its puzzles. */
export interface EpisodeRecord {
  readonly id: number;
  readonly seasonId: number;
  readonly seasonNumber: number;
  readonly seasonName: string;
  readonly number: number;
  readonly title: string;
  readonly isSample: boolean;
  readonly puzzles: number;
}

/** Loads a show; null for an unknown number. */
export async function loadShow(tx: Tx, id: number): Promise<ShowRecord | null> {
  const row = await tx.show.findUnique({ where: { id } });
  return row === null ? null : { ...row, locale: oneOf(['en', 'de'], row.locale) };
}

/** The name of the installation's show, the oldest; null before there is one. */
export async function loadShowName(tx: Tx): Promise<string | null> {
  const row = await tx.show.findFirst({ orderBy: { id: 'asc' }, select: { name: true } });
  return row?.name ?? null;
}

/** Makes a show with its first season, or takes over the one that sample data made; gives its number. */
export async function createShow(
  tx: Tx,
  show: { readonly name: string; readonly zone: string; readonly locale: 'en' | 'de' },
): Promise<number> {
  const seasons = { create: { number: 1, name: show.locale === 'de' ? 'Staffel 1' : 'Season 1' } };
  const ownerless = await tx.show.findFirst({ where: { members: { none: {} } }, include: { seasons: true } });
  if (ownerless !== null) {
    const number = Math.max(0, ...ownerless.seasons.map((season) => season.number)) + 1;
    const next = { create: { ...seasons.create, number } };
    await tx.show.update({ where: { id: ownerless.id }, data: { ...show, seasons: next } });
    return ownerless.id;
  }
  return (await tx.show.create({ data: { ...show, seasons }, select: { id: true } })).id;
}

/**
 * The show that a new owner takes: the one that sample data made before anybody owned it, under its new
 * name and with a season of its own, else a new one.
 */
export async function takeShow(
  tx: Tx,
  show: { readonly name: string; readonly zone: string; readonly locale: 'en' | 'de' },
): Promise<number> {
  const found = await tx.show.findFirst({ where: { members: { none: {} } }, orderBy: { id: 'asc' } });
  if (found === null) return createShow(tx, show);
  await tx.show.update({ where: { id: found.id }, data: show });
  if ((await loadCurrentSeason(tx, found.id)) !== null) return found.id;
  const last = await tx.season.aggregate({ where: { showId: found.id }, _max: { number: true } });
  const name = show.locale === 'de' ? 'Staffel 1' : 'Season 1';
  await tx.season.create({ data: { showId: found.id, number: (last._max.number ?? 0) + 1, name } });
  return found.id;
}

/** Episodes of a show, newest first. */
export async function listEpisodes(tx: Tx, showId: number): Promise<EpisodeRecord[]> {
  const rows = await tx.episode.findMany({
    where: { showId },
    include: { season: true, _count: { select: { puzzles: true } } },
    orderBy: [{ season: { number: 'desc' } }, { number: 'desc' }],
  });
  return rows.map((row) => ({
    id: row.id,
    seasonId: row.seasonId,
    seasonNumber: row.season.number,
    seasonName: row.season.name,
    number: row.number,
    title: row.title,
    isSample: row.isSample,
    puzzles: row._count.puzzles,
  }));
}

/** The season that new episodes join: the latest one that is not sample data; null where there is none. */
export async function loadCurrentSeason(tx: Tx, showId: number): Promise<number | null> {
  const row = await tx.season.findFirst({
    where: { showId, isSample: false },
    orderBy: { number: 'desc' },
    select: { id: true },
  });
  return row?.id ?? null;
}

/** Finds the episode of that number in the season, or makes it; gives its number as a row. */
export async function openEpisode(
  tx: Tx,
  episode: {
    readonly showId: number;
    readonly seasonId: number;
    readonly number: number;
    readonly title: string;
  },
): Promise<number> {
  const { showId, seasonId, number, title } = episode;
  const row = await tx.episode.upsert({
    where: { seasonId_number: { seasonId, number } },
    create: { showId, seasonId, number, title },
    update: {},
    select: { id: true },
  });
  return row.id;
}
