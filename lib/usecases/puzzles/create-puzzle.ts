// A host sets a puzzle: saved as a draft, its verification asked for in the same transaction.

import type { PuzzleTerms } from '#lib/book/terms.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { instantOf, isZone, parseWallTime } from '#lib/kit/zoned-time.ts';
import { randomToken } from '#lib/machine/tokens.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import { type FenReason, parseFen } from '#lib/rules/parse-fen.ts';
import { positionEnd } from '#lib/rules/position-end.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { inTransaction, type Tx } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { beginProgress } from '#lib/store/progress.ts';
import {
  createPuzzleRow,
  loadPuzzle,
  type PuzzleRecord,
  replaceTerms,
  savePuzzleWords,
} from '#lib/store/puzzles.ts';
import { loadCurrentSeason, openEpisode } from '#lib/store/shows.ts';

/** What the host typed; times as wall times in `zone` (`2026-11-27T18:00`). */
export interface PuzzleDraft {
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
}

/** Why a draft is not saved; `field` names the field of the form. */
export type DraftReason =
  | { readonly code: 'fen'; readonly field: 'position'; readonly reason: FenReason }
  | { readonly code: 'game-over'; readonly field: 'position' }
  | { readonly code: 'task-moves'; readonly field: 'moves' }
  | { readonly code: 'draw-needs-end'; readonly field: 'published' }
  | { readonly code: 'title'; readonly field: 'title' }
  | { readonly code: 'episode-number'; readonly field: 'episodeNumber' }
  | { readonly code: 'zone'; readonly field: 'zone' }
  | { readonly code: 'time'; readonly field: 'opensAt' | 'closesAt'; readonly found: string }
  | { readonly code: 'time-skipped'; readonly field: 'opensAt' | 'closesAt'; readonly found: string }
  | { readonly code: 'close-not-after-opening'; readonly field: 'closesAt' }
  | { readonly code: 'no-season'; readonly field: 'episodeNumber' }
  | { readonly code: 'not-a-draft'; readonly field: 'position' };

interface Checked {
  readonly terms: PuzzleTerms;
  readonly opensAt: Date;
  readonly closesAt: Date;
}

/** Saves a draft and asks for its verification; gives the puzzle's number. */
export async function createPuzzle(draft: PuzzleDraft): Promise<Result<number, DraftReason>> {
  const checked = checkDraft(draft);
  if (!checked.ok) return checked;
  const { terms, opensAt, closesAt } = checked.value;
  return inTransaction(async (tx) => {
    const seasonId = await loadCurrentSeason(tx, draft.showId);
    if (seasonId === null) return refuse({ code: 'no-season', field: 'episodeNumber' } as const);
    const { showId, memberId, episodeNumber: number } = draft;
    const episodeId = await openEpisode(tx, { showId, seasonId, number, title: draft.episodeTitle.trim() });
    const slug = await freeSlug(tx, `${number}`);
    const title = draft.title.trim();
    const puzzleId = await createPuzzleRow(tx, {
      ...{ showId, episodeId, slug, title, terms, opensAt, closesAt, memberId },
      zone: draft.zone,
    });
    if (draft.howFar.trim() !== '') await savePuzzleWords(tx, puzzleId, { howFar: draft.howFar.trim() });
    await enqueue(tx, 'verify-puzzle', { puzzleId });
    await appendLog(tx, { kind: 'puzzle-created', puzzleId, memberId });
    return ok(puzzleId);
  });
}

/** Changes a puzzle that is not published yet; what was verified no longer holds and is asked for anew. */
export async function changePuzzle(
  puzzleId: number,
  draft: PuzzleDraft,
): Promise<Result<number, DraftReason>> {
  const checked = checkDraft(draft);
  if (!checked.ok) return checked;
  const { terms, opensAt, closesAt } = checked.value;
  return inTransaction(async (tx) => {
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    if (puzzle === null || puzzle.showId !== draft.showId || puzzle.publishedAt !== null) {
      return refuse({ code: 'not-a-draft', field: 'position' } as const);
    }
    await replaceTerms(tx, puzzleId, terms);
    const howFar = draft.howFar.trim() || null;
    await savePuzzleWords(tx, puzzleId, {
      title: draft.title.trim(),
      howFar,
      opensAt,
      closesAt,
      zone: draft.zone,
    });
    await beginProgress(tx, puzzleId, 'waiting');
    await enqueue(tx, 'verify-puzzle', { puzzleId });
    await appendLog(tx, { kind: 'puzzle-changed', puzzleId, memberId: draft.memberId });
    return ok(puzzleId);
  });
}

/** Everything about a draft that needs no database. */
function checkDraft(draft: PuzzleDraft): Result<Checked, DraftReason> {
  const position = parseFen(draft.terms.fen);
  if (!position.ok) return refuse({ code: 'fen', field: 'position', reason: position.reason });
  if (positionEnd(position.value) !== null) return refuse({ code: 'game-over', field: 'position' });
  const { task } = draft.terms;
  if (task.kind === 'mate' && !(Number.isInteger(task.moves) && task.moves >= 1 && task.moves <= 30)) {
    return refuse({ code: 'task-moves', field: 'moves' });
  }
  if (task.kind === 'draw' && draft.terms.published.length === 0 && draft.terms.solverMoves === null) {
    return refuse({ code: 'draw-needs-end', field: 'published' });
  }
  const title = draft.title.trim();
  if (title === '' || title.length > 120) return refuse({ code: 'title', field: 'title' });
  const { episodeNumber } = draft;
  if (!Number.isInteger(episodeNumber) || episodeNumber < 1 || episodeNumber > 99_999) {
    return refuse({ code: 'episode-number', field: 'episodeNumber' });
  }
  if (!isZone(draft.zone)) return refuse({ code: 'zone', field: 'zone' });
  const opensAt = momentOf(draft.opensAt, 'opensAt', draft.zone);
  if (!opensAt.ok) return opensAt;
  const closesAt = momentOf(draft.closesAt, 'closesAt', draft.zone);
  if (!closesAt.ok) return closesAt;
  if (closesAt.value <= opensAt.value) return refuse({ code: 'close-not-after-opening', field: 'closesAt' });
  const terms = { ...draft.terms, fen: writeFen(position.value) };
  return ok({ terms, opensAt: opensAt.value, closesAt: closesAt.value });
}

// Of an hour that a zone has twice, the opening takes the earlier and the close the later one: nobody
// loses time by it, and the page names the offset.
function momentOf(text: string, field: 'opensAt' | 'closesAt', zone: string): Result<Date, DraftReason> {
  const wall = parseWallTime(text);
  if (wall === null) return refuse({ code: 'time', field, found: text.slice(0, 40) });
  const found = instantOf(wall, zone);
  if (found.kind === 'skipped') return refuse({ code: 'time-skipped', field, found: text.slice(0, 40) });
  return ok(found.kind === 'twice' && field === 'closesAt' ? found.second : found.at);
}

// Short enough to be said on the air; the number of the episode where it is free. A later puzzle of
// the same number gets two random characters more, so that addresses cannot be counted through.
async function freeSlug(tx: Tx, wanted: string): Promise<string> {
  let slug = wanted;
  let found: PuzzleRecord | null = await loadPuzzle(tx, { slug });
  while (found !== null) {
    slug = `${wanted}-${randomToken()
      .replace(/[^a-z0-9]/g, '')
      .padEnd(3, 'x')
      .slice(0, 3)}`;
    found = await loadPuzzle(tx, { slug });
  }
  return slug;
}
