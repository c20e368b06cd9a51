// What a host typed into the form of a puzzle becomes a draft, or changes one: times in a zone become
// moments, the episode is found or made.

import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { instantOf, isZone, parseWallTime } from '#lib/kit/zoned-time.ts';
import { inTransaction } from '#lib/store/client.ts';
import { savePuzzleWords } from '#lib/store/puzzles.ts';
import { loadCurrentSeason, openEpisode } from '#lib/store/shows.ts';
import { type ChangeReason, changeDraft } from './change-draft.ts';
import { checkTerms, createPuzzle } from './create-puzzle.ts';

/** The form as typed; times as wall times in `zone` (`2026-11-27T18:00`). */
export interface TypedPuzzle {
  readonly showId: number;
  readonly memberId: number;
  readonly episodeNumber: number;
  readonly episodeTitle: string;
  readonly title: string;
  readonly terms: PuzzleTerms;
  readonly opensAt: string;
  readonly closesAt: string;
  readonly zone: string;
  /** The host's wording of the sentence under the task; empty for the generated one. */
  readonly howFar: string;
  /** The first answer of a solver counts, not the last (rule P2). */
  readonly countsFirst?: boolean;
  /** The draft that is changed; a new one is made where left out. */
  readonly puzzleId?: number;
}

/** Why it is no draft yet. */
export type TypedReason =
  | ChangeReason
  | { readonly code: 'title-too-long'; readonly most: number }
  | { readonly code: 'episode-number' }
  | { readonly code: 'zone' }
  | TimeReason
  | { readonly code: 'no-season' };

/** Why a typed time is no moment. */
export interface TimeReason {
  readonly code: 'time' | 'time-skipped';
  readonly field: TimeField;
  readonly found: string;
}

/** The two times of the form. */
export type TimeField = 'opensAt' | 'closesAt';

/** Longest title, in UTF-16 units. */
export const LONGEST_TITLE = 120;

/** Terms with the defaults for what a host need not say. */
export function puzzleTerms(said: Pick<PuzzleTerms, 'fen' | 'task'> & Partial<PuzzleTerms>): PuzzleTerms {
  return { ...DEFAULT_TERMS, ...said };
}

/** Saves the draft, new or changed, and asks for its verification; gives the puzzle's number. */
export async function setPuzzle(typed: TypedPuzzle): Promise<Result<number, TypedReason>> {
  const terms = checkTerms(typed.terms);
  if (!terms.ok) return terms;
  const { showId, memberId, episodeNumber: number, zone } = typed;
  if (typed.title.trim().length > LONGEST_TITLE)
    return refuse({ code: 'title-too-long', most: LONGEST_TITLE });
  if (!Number.isInteger(number) || number < 1 || number > 99_999) return refuse({ code: 'episode-number' });
  if (!isZone(zone)) return refuse({ code: 'zone' });
  const opensAt = momentOf(typed.opensAt, 'opensAt', zone);
  if (!opensAt.ok) return opensAt;
  const closesAt = momentOf(typed.closesAt, 'closesAt', zone);
  if (!closesAt.ok) return closesAt;
  if (closesAt.value <= opensAt.value) return refuse({ code: 'close-not-after-opening' });
  const episodeId = await inTransaction(async (tx) => {
    const seasonId = await loadCurrentSeason(tx, showId);
    if (seasonId === null) return null;
    return openEpisode(tx, {
      showId,
      seasonId,
      number,
      title: typed.episodeTitle.trim().slice(0, LONGEST_TITLE),
    });
  });
  if (episodeId === null) return refuse({ code: 'no-season' });
  const howFar = typed.howFar.trim().slice(0, 200) || null;
  const times = { opensAt: opensAt.value, closesAt: closesAt.value, zone };
  const draft = {
    episodeId,
    title: typed.title.trim(),
    countsFirst: typed.countsFirst ?? false,
    ...times,
  };
  if (typed.puzzleId !== undefined) {
    const { puzzleId } = typed;
    const words = { ...draft, howFar };
    const changed = await changeDraft({ puzzleId, memberId, terms: terms.value, words });
    return changed.ok ? ok(puzzleId) : changed;
  }
  const created = await createPuzzle({ ...draft, showId, memberId, terms: terms.value });
  if (!created.ok) return created;
  const { puzzleId } = created.value;
  if (howFar !== null) await inTransaction((tx) => savePuzzleWords(tx, puzzleId, { howFar }));
  return ok(puzzleId);
}

/**
 * The moment of a typed time. Of an hour that a zone has twice, the opening takes the earlier and the
 * close the later one: nobody loses time by it, and the page names the offset.
 */
export function momentOf(text: string, field: TimeField, zone: string): Result<Date, TimeReason> {
  const found = text.slice(0, 40);
  const wall = parseWallTime(text);
  if (wall === null) return refuse({ code: 'time', field, found });
  const instant = instantOf(wall, zone);
  if (instant.kind === 'skipped') return refuse({ code: 'time-skipped', field, found });
  return ok(instant.kind === 'twice' && field === 'closesAt' ? instant.second : instant.at);
}
