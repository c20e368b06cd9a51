// The log as the desk reads it.

import { db } from '#lib/store/client.ts';
import { type LogLine, listLogLines } from '#lib/store/log-pages.ts';

/** A page of the log. */
export interface LogPage {
  readonly lines: readonly LogLine[];
  /** Where the next page begins; null on the last. */
  readonly next: number | null;
}

const PAGE = 100;

/** Entries newest first. */
export async function showLog(asked: {
  readonly showId: number;
  readonly below: number | null;
}): Promise<LogPage> {
  const lines = await listLogLines(db(), { ...asked, most: PAGE + 1 });
  const shown = lines.slice(0, PAGE);
  return { lines: shown, next: lines.length > PAGE ? (shown.at(-1)?.id ?? null) : null };
}
