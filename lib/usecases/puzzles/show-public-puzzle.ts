// What anybody may see of a puzzle: its public view and the database's time of looking.

import { createBook } from '#lib/book/solution-book.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { howFarSentence } from '#lib/marking/how-far.ts';
import { type PublicPuzzle, toPublicPuzzle } from '#lib/puzzle/public-puzzle.ts';
import { stateAt } from '#lib/puzzle/puzzle-state.ts';
import { mayBeSeen } from '#lib/puzzle/what-may-be-seen.ts';
import { db } from '#lib/store/client.ts';
import { listCorrections } from '#lib/store/corrections.ts';
import { loadPuzzle, loadPuzzleScheme, type PuzzleRecord } from '#lib/store/puzzles.ts';
import type { Locale } from '#lib/words/locale.ts';
import { loadBook } from '../answers/loaded-book.ts';

/** A public puzzle and the moment at which it stood so. */
export interface ShownPuzzle {
  readonly puzzle: PublicPuzzle;
  readonly now: Date;
}

/** The one reason: drafts and puzzles not yet open do not exist for the public. */
export interface UnknownPuzzle {
  readonly code: 'unknown-puzzle';
}

/** The public view of the puzzle at an address. */
export async function showPublicPuzzle(input: {
  readonly slug: string;
  readonly locale: Locale;
}): Promise<Result<ShownPuzzle, UnknownPuzzle>> {
  const record = await loadPuzzle(db(), { slug: input.slug });
  const puzzle = record === null ? null : await publicView(record, input.locale);
  if (record === null || puzzle === null) return refuse({ code: 'unknown-puzzle' });
  return ok({ puzzle, now: record.now });
}

/** The public view of a stored puzzle, or null where the public may not know of it. */
export async function publicView(record: PuzzleRecord, locale: Locale): Promise<PublicPuzzle | null> {
  if (!mayBeSeen('puzzle', 'public', stateAt(record, record.now))) return null;
  return toPublicPuzzle(
    {
      slug: record.slug,
      showName: record.show.name,
      episodeNumber: record.episode.number,
      episodeTitle: record.episode.title,
      title: record.title,
      howFar: record.howFar ?? (await generatedHowFar(record, locale)),
      zone: record.zone,
      scheme: await loadPuzzleScheme(db(), record),
      terms: record.terms,
      verifiedAt: record.verifiedAt,
      publishedAt: record.publishedAt,
      opensAt: record.opensAt,
      closesAt: record.closesAt,
      revealedAt: record.revealedAt,
      voidedAt: record.voidedAt,
      revision: record.revision,
      corrections: await listCorrections(db(), record.id),
    },
    record.now,
  );
}

/** The generated sentence (rule O1). In a mate task the terms say it; else the number of moves comes from the book, and nothing else does. */
async function generatedHowFar(record: PuzzleRecord, locale: Locale): Promise<string> {
  const loaded = record.task.kind === 'mate' ? null : await loadBook(db(), record);
  if (loaded !== null) return howFarSentence(loaded.terms, loaded.book, locale);
  return howFarSentence({ ...record.terms, published: [] }, createBook([]), locale);
}

/** The same puzzle with position and task of a revision that stood at its address (rule A6). */
export function asSeen(
  puzzle: PublicPuzzle,
  revision: number,
  { fen, task }: Pick<PuzzleTerms, 'fen' | 'task'>,
): PublicPuzzle {
  if (revision === puzzle.revision) return puzzle;
  return { ...puzzle, revision, fen, task, turn: fen.split(' ')[1] === 'b' ? 'b' : 'w' };
}
