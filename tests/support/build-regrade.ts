// A revealed puzzle whose marks would change: a move that was unclear is ruled to hold, so two rise; a text
// is ruled to mean another move, so one falls.

import { createTree } from '#lib/book/position-tree.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { appendBookRows, budgetsKey } from '#lib/store/books.ts';
import { db } from '#lib/store/client.ts';
import { saveReadingRuling, saveVerdictRuling } from '#lib/store/rulings.ts';
import { textHash } from '#lib/usecases/answers/doubt-key.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { buildPuzzle, buildShow, MATE_IN_ONE } from './build-show.ts';
import { send } from './build-solution.ts';
import { verifyHere } from './engine-in-process.ts';

const SENT = { Ada: 'Ra8', Bo: 'Kf1', Cy: '1.Kf1!', Di: 'Ra8#', Eve: 'Rb1' } as const;
export type Viewer = keyof typeof SENT;

/** A puzzle with five marked answers: two solve it, two play a move that is unclear, one is wrong. */
export async function buildMarked({ isRevealed = true }: { readonly isRevealed?: boolean } = {}) {
  const show = await buildShow();
  const { slug, puzzleId } = await buildPuzzle(show);
  await db().puzzle.update({ where: { id: puzzleId }, data: { engineVersion: ENGINE_VERSION } });
  const { root, moves } = createTree(MATE_IN_ONE.fen);
  const place = { fen: MATE_IN_ONE.fen, position: root.bookPosition, movesLeft: 1 };
  const lacking = moves(root).map((move) => ({ ...place, move }));
  const rows = (await verifyHere({ terms: MATE_IN_ONE, lacking })).map((row) =>
    row.move === 'g1f1' ? { ...row, verdict: 'unclear' as const } : row,
  );
  await appendBookRows(db(), puzzleId, rows, budgetsKey(MATE_IN_ONE));
  const answers = {} as Record<Viewer, number>;
  for (const name of Object.keys(SENT) as Viewer[])
    answers[name] = (await send(slug, SENT[name], { name })).answerId;
  await markAnswers({ puzzleId });
  if (isRevealed) await reveal(puzzleId);
  return { ...show, slug, puzzleId, answers };
}

/** As the host's deed does it, but at once. */
export async function reveal(puzzleId: number): Promise<void> {
  await db().$executeRaw`
    update puzzle set closes_at = clock_timestamp(), revealed_at = clock_timestamp() where id = ${puzzleId}`;
}

/** Rules that Kf1 holds, so that Bo and Cy rise. */
export async function ruleForBoAndCy(puzzleId: number, memberId: number): Promise<void> {
  const { root } = createTree(MATE_IN_ONE.fen);
  const key = { position: root.bookPosition, movesLeft: 1, move: 'g1f1' };
  await saveVerdictRuling(db(), puzzleId, { ...key, verdict: 'holds', reason: 'it is enough', memberId });
}

/** Rules that Ada's text means another move, so that she falls. */
export async function ruleAgainstAda(puzzleId: number, memberId: number): Promise<void> {
  const ruling = { textHash: textHash(SENT.Ada), meant: ['a1b1'], reason: 'a slip of the pen', memberId };
  await saveReadingRuling(db(), puzzleId, ruling);
}

/** Outcomes and points in force, by viewer. */
export async function marksOf(puzzleId: number): Promise<Record<string, string>> {
  const rows = await db().mark.findMany({
    where: { puzzleId, isCurrent: true },
    orderBy: { answerId: 'asc' },
    include: { answer: { select: { name: true } } },
  });
  return Object.fromEntries(rows.map((row) => [row.answer.name ?? '', `${row.outcome} ${row.points}`]));
}
