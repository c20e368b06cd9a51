// Reads a viewer's text back before anything is stored (rule R8). Nothing here knows a verdict; where the
// text is a line at another recent puzzle of the show, that one is offered (rule R15).

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { randomToken } from '#lib/machine/tokens.ts';
import { looksTheSame } from '#lib/puzzle/correction.ts';
import type { PublicPuzzle } from '#lib/puzzle/public-puzzle.ts';
import { toldRevision } from '#lib/puzzle/revision-seen.ts';
import { readText } from '#lib/reading/read-text.ts';
import type { ReadResult } from '#lib/reading/reading.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { db } from '#lib/store/client.ts';
import { loadTermsOf } from '#lib/store/former-terms.ts';
import { listOpened, loadPuzzle, loadTerms, type PuzzleRecord } from '#lib/store/puzzles.ts';
import type { Locale } from '#lib/words/locale.ts';
import { asSeen, publicView } from '../puzzles/show-public-puzzle.ts';

/** A text read back. */
export interface ReadBack {
  /** As the sender's page showed it: `revision` and position may be those before an amendment (rule A6). */
  readonly puzzle: PublicPuzzle;
  /** The puzzle was amended since that page was made. */
  readonly isCorrected: boolean;
  readonly now: Date;
  readonly read: ReadResult;
  /** A fresh key under which this text may be sent. */
  readonly clientKey: string;
  /** Another puzzle at which the text is a full line; null where there is none. */
  readonly elsewhere: { readonly slug: string; readonly title: string; readonly closesAt: Date } | null;
}

const RECENT = 5;

/** Reads a text as an answer to a public puzzle; in every state but void, so that nobody's typing is lost at the close. */
export async function readBack(input: {
  readonly slug: string;
  readonly text: string;
  readonly locale: Locale;
  /** Revision that the sender's page showed, as it came. */
  readonly seen?: unknown;
}): Promise<Result<ReadBack, { readonly code: 'unknown-puzzle' }>> {
  const record = await loadPuzzle(db(), { slug: input.slug });
  const current = record === null ? null : await publicView(record, input.locale);
  if (record === null || current === null) return refuse({ code: 'unknown-puzzle' });
  const puzzle = await asTold(record, current, input.seen);
  const read = readAt(puzzle.fen, input.text);
  // No reading goes through to its end here: perhaps it was written for another puzzle.
  const isNoLine = read.kind !== 'chatter' && read.readings.every((one) => one.impossibleAt !== null);
  return ok({
    puzzle,
    isCorrected: puzzle.revision !== record.revision,
    now: record.now,
    read,
    clientKey: randomToken(),
    elsewhere: isNoLine ? await findElsewhere(record, input) : null,
  });
}

// The puzzle as the page showed it that the text comes from; as it stands where nobody could see a difference.
async function asTold(record: PuzzleRecord, current: PublicPuzzle, seen: unknown): Promise<PublicPuzzle> {
  const told = toldRevision(seen, record.revision) ?? record.revision;
  if (told === record.revision) return current;
  const former = await loadTermsOf(db(), record, told);
  const isAlike = looksTheSame(former, await loadTerms(db(), record));
  return isAlike ? current : asSeen(current, told, former);
}

function readAt(fen: string, text: string): ReadResult {
  const position = parseFen(fen);
  if (!position.ok) throw new Error(`The stored position cannot be read: ${fen}`);
  return readText({ position: position.value, text });
}

async function findElsewhere(
  here: PuzzleRecord,
  { text, locale }: { readonly text: string; readonly locale: Locale },
): Promise<ReadBack['elsewhere']> {
  const others = (await listOpened(db(), RECENT)).filter(
    (one) => one.id !== here.id && one.showId === here.showId,
  );
  for (const other of others) {
    const puzzle = await publicView(other, locale);
    if (puzzle === null) continue;
    const isFull = readAt(other.terms.fen, text).readings.some(
      ({ line, impossibleAt }) => line.length > 1 && impossibleAt === null,
    );
    if (!isFull) continue;
    return { slug: puzzle.slug, title: puzzle.title, closesAt: puzzle.closesAt };
  }
  return null;
}
