// A puzzle that is not published as the fields of the form that changes it.

import { db } from '#lib/store/client.ts';
import { loadTerms, type PuzzleRecord } from '#lib/store/puzzles.ts';

/** What the form shows: texts by name of field, boxes that are ticked, and the times in their zone. */
export interface DraftFields {
  readonly texts: Readonly<Record<string, string>>;
  readonly title: string;
  readonly opensAt: Date | null;
  readonly closesAt: Date | null;
  readonly zone: string;
}

/** The fields; null once the puzzle is published. */
export async function showDraft(puzzle: PuzzleRecord): Promise<DraftFields | null> {
  if (puzzle.publishedAt !== null) return null;
  const terms = await loadTerms(db(), puzzle);
  const ticked = { ...terms, countsFirst: puzzle.countsFirst };
  const ticks = (['anyDefence', 'mateWritten', 'isStrict', 'countsFirst'] as const).filter(
    (name) => ticked[name],
  );
  const texts = {
    puzzle: String(puzzle.id),
    position: terms.fen,
    published: terms.published.join('\n'),
    task: terms.task.kind,
    moves: terms.task.kind === 'mate' ? String(terms.task.moves) : '',
    scheme: terms.scheme,
    episodeNumber: String(puzzle.episode.number),
    episodeTitle: puzzle.episode.title,
    howFar: puzzle.howFar ?? '',
    solverMoves: terms.solverMoves === null ? '' : String(terms.solverMoves),
    ...Object.fromEntries(ticks.map((name) => [name, 'on'])),
  };
  const { title, opensAt, closesAt, zone } = puzzle;
  return { texts, title, opensAt, closesAt, zone };
}
