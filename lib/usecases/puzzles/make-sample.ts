// Sample data on request: an invented show with two episodes that are over and one that is open, made
// by the same deeds as everything else. Refused where there is any episode; removed as a whole.

import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import { databaseNow, db, inTransaction } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { saveCloseMoved } from '#lib/store/puzzle-moments.ts';
import { countEpisodes, createSampleSeason, deleteSample } from '#lib/store/samples.ts';
import { importComments, takeInComments } from '../answers/import-comments.ts';
import { markAnswers } from '../answers/mark-answers.ts';
import { closeByTime } from './close-puzzle.ts';
import { saveDraft } from './create-puzzle.ts';
import { extendBook } from './extend-book.ts';
import type { Verify } from './fill-book.ts';
import { publishPuzzle } from './publish-puzzle.ts';
import { revealPuzzle } from './reveal-puzzle.ts';
import { SAMPLE_EPISODES, SAMPLE_SHOW, type SampleEpisode } from './sample-scenario.ts';
import { verifyPuzzle } from './verify-puzzle.ts';

const DAY_MS = 86_400_000;
const ZONE = 'Europe/London';

/** Why there is no sample. */
export type SampleReason = { readonly code: 'episodes-exist' };

/** Asks the worker for sample data. */
export async function askForSample(by: {
  readonly memberId: number | null;
}): Promise<Result<null, SampleReason>> {
  if ((await countEpisodes(db())) > 0) return refuse({ code: 'episodes-exist' });
  await enqueue(db(), 'make-sample', { memberId: by.memberId });
  return ok(null);
}

/** Makes the sample data; where it was begun before, it is made anew. */
export async function makeSample(how: {
  readonly memberId: number | null;
  readonly verify: Verify;
}): Promise<Result<number, SampleReason>> {
  const { memberId, verify } = how;
  await inTransaction((tx) => deleteSample(tx));
  const place = await inTransaction(async (tx) => {
    if ((await countEpisodes(tx)) > 0) return null;
    return createSampleSeason(tx, {
      showName: SAMPLE_SHOW,
      zone: ZONE,
      season: 'Sample season',
      titles: SAMPLE_EPISODES.map((episode) => episode.title),
    });
  });
  if (place === null) return refuse({ code: 'episodes-exist' });
  const now = await databaseNow(db());
  for (const [index, episode] of SAMPLE_EPISODES.entries()) {
    const episodeId = place.episodeIds[index] ?? 0;
    await playEpisode(episode, { showId: place.showId, episodeId, now, memberId, verify });
  }
  const details = { episodes: SAMPLE_EPISODES.length };
  await inTransaction((tx) => appendLog(tx, { kind: 'sample-made', memberId, details }));
  return ok(SAMPLE_EPISODES.length);
}

/** Removes all sample data; gives how many episodes it were. */
export async function removeSample(by: { readonly memberId: number | null }): Promise<number> {
  const { memberId } = by;
  return inTransaction(async (tx) => {
    const episodes = await deleteSample(tx);
    if (episodes > 0) await appendLog(tx, { kind: 'sample-removed', memberId, details: { episodes } });
    return episodes;
  }, 60_000);
}

interface Stage {
  readonly showId: number;
  readonly episodeId: number;
  readonly now: Date;
  readonly memberId: number | null;
  readonly verify: Verify;
}

function must<T>(result: Result<T, { readonly code: string }>): T {
  if (!result.ok) throw new Error(`The sample scenario was refused: ${JSON.stringify(result.reason)}`);
  return result.value;
}

async function playEpisode(episode: SampleEpisode, stage: Stage): Promise<void> {
  const { showId, episodeId, now, memberId, verify } = stage;
  const daysAgo = (days: number) => new Date(now.getTime() - days * DAY_MS);
  const terms: PuzzleTerms = {
    ...DEFAULT_TERMS,
    fen: episode.fen,
    task: { kind: 'mate', moves: episode.moves },
    published: [episode.published],
  };
  const title = episode.puzzle;
  const opensAt = daysAgo(episode.openedDaysAgo);
  const closesAt = daysAgo(-7);
  const { puzzleId } = must(
    await saveDraft(
      { showId, episodeId, title, terms, opensAt, closesAt, zone: ZONE, memberId },
      async () => {},
    ),
  );
  await verifyPuzzle({ puzzleId, verify });
  must(await publishPuzzle({ puzzleId, memberId, overrideReason: null }));
  await takeInSample(puzzleId, episode, stage);
  if (episode.closedDaysAgo !== null) {
    // No deed of a host closes a puzzle in the past; what is invented here lies there.
    const closedAt = daysAgo(episode.closedDaysAgo);
    await inTransaction((tx) => saveCloseMoved(tx, puzzleId, closedAt));
    await closeByTime(puzzleId);
  }
  for (let isLacking = true; isLacking; ) {
    isLacking = (await markAnswers({ puzzleId })).lacking > 0;
    if (isLacking) await extendBook({ puzzleId, verify });
  }
  if (episode.closedDaysAgo !== null) must(await revealPuzzle({ puzzleId, memberId }));
}

async function takeInSample(puzzleId: number, episode: SampleEpisode, stage: Stage): Promise<void> {
  const lines = episode.comments.map(({ author, daysAgo, text }) =>
    JSON.stringify({ author, text, time: new Date(stage.now.getTime() - daysAgo * DAY_MS).toISOString() }),
  );
  const importId = must(
    await importComments({
      puzzleId,
      showId: stage.showId,
      memberId: stage.memberId,
      sourceName: `${SAMPLE_SHOW}, comments`,
      format: 'jsonl',
      fileName: null,
      bytes: new TextEncoder().encode(lines.join('\n')),
      columns: null,
      timeWord: 'before',
      exportedAt: stage.now,
      zone: ZONE,
    }),
  );
  await takeInComments(importId);
}
