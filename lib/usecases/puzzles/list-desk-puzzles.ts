// The desk's first page: the show's episodes with their puzzles, newest first.

import { parseOpinion } from '#lib/book/explain-opinion.ts';
import { type PuzzleState, stateAt } from '#lib/puzzle/puzzle-state.ts';
import { countAnswers } from '#lib/store/answers.ts';
import { db } from '#lib/store/client.ts';
import { listPuzzles, type PuzzleRecord } from '#lib/store/puzzles.ts';
import { listPuzzlesToDecide } from '#lib/store/regrades.ts';
import { type EpisodeRecord, listEpisodes } from '#lib/store/shows.ts';

/** One puzzle in the list. */
export interface DeskPuzzleLine {
  readonly id: number;
  readonly slug: string;
  readonly title: string;
  readonly state: PuzzleState;
  readonly opensAt: Date | null;
  readonly closesAt: Date | null;
  readonly zone: string;
  /** People who answered so far. */
  readonly solvers: number;
  /** A regrade waits for the host's word (rule A7). */
  readonly hasRegrade: boolean;
}

/** One episode in the list. */
export interface DeskEpisode extends EpisodeRecord {
  readonly lines: readonly DeskPuzzleLine[];
}

/** Everything that the list shows; `nextNumber` is proposed for a new episode. */
export interface DeskList {
  readonly episodes: readonly DeskEpisode[];
  readonly nextNumber: number;
  readonly hasSample: boolean;
  /** The operator's program failed too often: at the puzzle verified last it was no longer asked. */
  readonly isProgramSetAside: boolean;
}

/** Lists the episodes of a show. */
export async function listDeskPuzzles(showId: number): Promise<DeskList> {
  const tx = db();
  const [episodes, puzzles] = await Promise.all([listEpisodes(tx, showId), listPuzzles(tx, showId)]);
  const toDecide = await listPuzzlesToDecide(tx, showId);
  const lines = new Map<number, DeskPuzzleLine[]>();
  for (const puzzle of puzzles) {
    const { id, slug, title, opensAt, closesAt, zone } = puzzle;
    const state = stateAt(puzzle, puzzle.now);
    const { solvers } = await countAnswers(tx, id);
    const hasRegrade = toDecide.has(id);
    const line = { id, slug, title, state, opensAt, closesAt, zone, solvers, hasRegrade };
    lines.set(puzzle.episodeId, [...(lines.get(puzzle.episodeId) ?? []), line]);
  }
  const own = episodes.filter((episode) => !episode.isSample);
  return {
    episodes: episodes.map((episode) => ({ ...episode, lines: lines.get(episode.id) ?? [] })),
    nextNumber: Math.max(0, ...own.map((episode) => episode.number)) + 1,
    hasSample: episodes.some((episode) => episode.isSample),
    isProgramSetAside: isProgramSetAside(puzzles),
  };
}

function isProgramSetAside(puzzles: readonly PuzzleRecord[]): boolean {
  const [latest] = puzzles
    .filter(({ verifiedAt, secondOpinion }) => verifiedAt !== null && secondOpinion !== null)
    .sort((a, b) => Number(b.verifiedAt) - Number(a.verifiedAt));
  const opinion = parseOpinion(latest?.secondOpinion);
  return opinion?.kind === 'none' && opinion.fault === 'set-aside';
}
