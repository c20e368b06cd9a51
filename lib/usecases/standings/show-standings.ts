// Who stands where in an episode or season, a page at a time (rule S1).

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { db } from '#lib/store/client.ts';
import {
  listStandingScopes,
  loadStandings,
  type StandingPlace,
  type StandingRow,
} from '#lib/store/standings.ts';

/** An episode or season that standings can be asked of. */
export interface ScopeChoice {
  readonly kind: 'season' | 'episode';
  readonly id: number;
  readonly name: string;
  /** Number of the episode; null for a season. */
  readonly number: number | null;
}

/** A page of standings. */
export interface ShownStandings {
  readonly showName: string;
  readonly scope: ScopeChoice | null;
  readonly choices: readonly ScopeChoice[];
  readonly rows: readonly StandingRow[];
  readonly solvers: number;
  /** Where the next page goes on; null on the last. */
  readonly next: StandingPlace | null;
}

const PAGE_SIZE = 100;

/** The standings of the asked episode or season; of the newest season where none is asked. */
export async function showStandings(input: {
  readonly season?: number;
  readonly episode?: number;
  readonly after?: StandingPlace;
}): Promise<Result<ShownStandings, { readonly code: 'unknown-standings' }>> {
  const tx = db();
  const episodes = await listStandingScopes(tx);
  const choices = choicesOf(episodes);
  const scope = pickScope(choices, input);
  if (scope === undefined) {
    const isAsked = input.season !== undefined || input.episode !== undefined;
    if (isAsked) return refuse({ code: 'unknown-standings' });
    return ok({ showName: '', scope: null, choices: [], rows: [], solvers: 0, next: null });
  }
  const { rows, solvers } = await loadStandings(
    tx,
    scope.kind === 'season' ? { seasonId: scope.id } : { episodeId: scope.id },
    { after: input.after ?? null, size: PAGE_SIZE + 1 },
  );
  const shown = rows.slice(0, PAGE_SIZE);
  const next = rows.length > PAGE_SIZE ? (shown.at(-1) ?? null) : null;
  return ok({ showName: episodes[0]?.showName ?? '', scope, choices, rows: shown, solvers, next });
}

function choicesOf(episodes: Awaited<ReturnType<typeof listStandingScopes>>): ScopeChoice[] {
  const choices: ScopeChoice[] = [];
  for (const one of episodes) {
    if (!choices.some((choice) => choice.kind === 'season' && choice.id === one.seasonId)) {
      choices.push({ kind: 'season', id: one.seasonId, name: one.seasonName, number: null });
    }
    choices.push({ kind: 'episode', id: one.episodeId, name: one.episodeTitle, number: one.episodeNumber });
  }
  return choices;
}

function pickScope(
  choices: readonly ScopeChoice[],
  asked: { readonly season?: number; readonly episode?: number },
): ScopeChoice | undefined {
  if (asked.episode !== undefined) {
    return choices.find((choice) => choice.kind === 'episode' && choice.id === asked.episode);
  }
  if (asked.season === undefined) return choices[0];
  return choices.find((choice) => choice.kind === 'season' && choice.id === asked.season);
}
