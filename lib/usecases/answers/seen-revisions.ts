// Which revisions of a puzzle's terms is an answer judged on, and which one is it shown with? Rule A6.

import type { PuzzleTerms } from '#lib/book/terms.ts';
import { looksTheSame } from '#lib/puzzle/correction.ts';
import { revisionsSeen } from '#lib/puzzle/revision-seen.ts';
import type { AnswerRecord } from '#lib/store/answers.ts';
import type { Tx } from '#lib/store/client.ts';
import { listFormerTerms } from '#lib/store/former-terms.ts';
import { loadTerms, type PuzzleRecord } from '#lib/store/puzzles.ts';

/** Terms that stood at the puzzle's address. */
export interface StoodTerms {
  readonly revision: number;
  readonly terms: PuzzleTerms;
  /** Null for those in force. */
  readonly replacedAt: Date | null;
}

/**
 * The revisions that the writer can have seen, each once, newest first; `stood` in the order of revisions, those
 * in force last. Of terms that look the same to a writer the newest hold: they differ in the keys alone.
 */
export function revisionsToJudge(
  answer: Pick<AnswerRecord, 'seenRevision' | 'statedTo' | 'receivedAt'>,
  opensAt: Date | null,
  stood: readonly StoodTerms[],
): number[] {
  const { statedTo, receivedAt, seenRevision } = answer;
  // A comment was written before it was taken in, whatever its source states.
  const latest = statedTo !== null && statedTo < receivedAt ? statedTo : receivedAt;
  const replaced = stood.flatMap(({ revision, replacedAt }) =>
    replacedAt === null ? [] : [{ revision, replacedAt }],
  );
  const current = stood.at(-1)?.revision ?? 1;
  const seen = revisionsSeen({ told: seenRevision, latest }, { current, opensAt, replaced });
  const taken = seen.flatMap((revision) => {
    const own = stood.find((one) => one.revision === revision);
    return own === undefined ? [] : (stood.findLast((one) => looksTheSame(own.terms, one.terms)) ?? []);
  });
  return [...new Set(taken.map(({ revision }) => revision))].sort((a, b) => b - a);
}

/**
 * The terms that an answer is shown with: those its mark rests on where the mark may be seen, else those its
 * writer saw. Where that cannot be told it is the newest possible, so that nothing depends on a verdict (rule T2).
 */
export async function loadTermsShown(
  tx: Tx,
  puzzle: PuzzleRecord,
  { answer, marked }: { readonly answer: AnswerRecord; readonly marked: number | null },
): Promise<{ readonly revision: number; readonly terms: PuzzleTerms }> {
  // Of a puzzle that never was amended the solution is not even loaded before it may be seen.
  if (puzzle.revision === 1 && marked === null)
    return { revision: 1, terms: { ...puzzle.terms, published: [] } };
  const stood: StoodTerms[] = [
    ...(await listFormerTerms(tx, puzzle)),
    { revision: puzzle.revision, terms: await loadTerms(tx, puzzle), replacedAt: null },
  ];
  const wanted = marked ?? revisionsToJudge(answer, puzzle.opensAt, stood)[0];
  const shown = stood.find(({ revision }) => revision === wanted) ?? stood.at(-1);
  if (shown === undefined) throw new Error('A puzzle without terms.');
  return shown;
}

/**
 * The revisions with the position in force. What is counted by moves is counted over their marks alone: a move
 * in another position says nothing about this one.
 */
export async function loadRevisionsHere(tx: Tx, puzzle: PuzzleRecord): Promise<number[]> {
  const former = await listFormerTerms(tx, puzzle);
  const here = former.filter(({ terms }) => terms.fen === puzzle.terms.fen);
  return [...here.map(({ revision }) => revision), puzzle.revision];
}
