// The first page: what is open, and what was before.

import type { PublicPuzzle } from '#lib/puzzle/public-puzzle.ts';
import { databaseNow, db } from '#lib/store/client.ts';
import { listOpened } from '#lib/store/puzzles.ts';
import { loadShowName } from '#lib/store/shows.ts';
import type { Locale } from '#lib/words/locale.ts';
import { publicView } from './show-public-puzzle.ts';

/** The puzzles of the first page, latest first. */
export interface FrontPage {
  readonly showName: string | null;
  readonly open: readonly PublicPuzzle[];
  readonly past: readonly PublicPuzzle[];
  readonly now: Date;
}

const MOST = 60;

/** Open puzzles and up to sixty past ones. */
export async function showFrontPage(input: { readonly locale: Locale }): Promise<FrontPage> {
  const tx = db();
  const [records, showName, now] = [
    await listOpened(tx, MOST),
    await loadShowName(tx),
    await databaseNow(tx),
  ];
  const views = await Promise.all(records.map((record) => publicView(record, input.locale)));
  const puzzles = views.filter((puzzle) => puzzle !== null);
  return {
    showName,
    open: puzzles.filter((puzzle) => puzzle.state === 'open'),
    past: puzzles.filter((puzzle) => puzzle.state !== 'open'),
    now,
  };
}
