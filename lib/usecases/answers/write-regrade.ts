// A regrade takes force as a whole (rule A7): all new marks, what counts by them, and the log in one
// transaction. A reader sees the old marks or the new ones; a worker that is killed leaves the old ones.

import { isDeepStrictEqual } from 'node:util';
import { sleep } from '#lib/machine/clock.ts';
import { config } from '#lib/machine/config.ts';
import { log } from '#lib/machine/log.ts';
import { answersToRegrade, isOtherMark } from '#lib/marking/regrade.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import { inTransaction, type Tx } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { appendMarks, type MarkChange, type MarkRecord, type NewMark } from '#lib/store/marks.ts';
import { loadMarksInForce } from '#lib/store/marks-in-force.ts';
import { loadPuzzle, type PuzzleRecord } from '#lib/store/puzzles.ts';
import {
  holdRegrade,
  loadRegrade,
  type RegradeRecord,
  type StoredPreview,
  saveRegradeDecided,
  saveRegradePreview,
  workOutAnew,
} from '#lib/store/regrades.ts';
import { lockSolvers } from '#lib/store/solvers.ts';
import { renewStandings } from './renew-standings.ts';
import {
  expectedMark,
  isAskingOn,
  isSamePreview,
  type JudgedAnswer,
  judgedPages,
  workOutMarks,
} from './work-out-marks.ts';

const TIMEOUT_MS = 900_000;
const MOST_TRIES = 5;
const CHANGES_AN_ENTRY = 500;

/** What came of it: `renewed`, another preview waits for the host; `lacking`, the book has to grow first. */
export type Written = 'applied' | 'renewed' | 'lacking' | 'nothing';

/** Something moved while the marks were being written: none of them is kept, and it is looked at anew. */
class MarksMoved extends Error {}

/** Writes what the host said yes to, if that is still what a marking now would give. */
export async function writeRegrade(regradeId: number): Promise<Written> {
  for (let tries = 1; ; tries += 1) {
    try {
      return await inTransaction((tx) => writeWithin(tx, regradeId), TIMEOUT_MS);
    } catch (error) {
      if (!(error instanceof MarksMoved) || tries === MOST_TRIES) throw error;
    }
  }
}

async function writeWithin(tx: Tx, regradeId: number): Promise<Written> {
  const regrade = await loadRegrade(tx, regradeId);
  const puzzle = regrade === null ? null : await loadPuzzle(tx, { id: regrade.puzzleId });
  if (regrade?.state !== 'applying' || regrade.stored === null || puzzle === null) return 'nothing';
  const { answers } = regrade.scope;
  const worked = await workOutMarks(tx, puzzle, { answers, onPage: async () => true });
  if (worked === null) return 'nothing';
  if (isAskingOn(worked, regrade.scope)) {
    await holdAsIs(tx, regrade);
    await workOutAnew(tx, regrade, { isRenewed: true });
    await enqueue(tx, 'regrade', { regradeId });
    return 'lacking';
  }
  const { stored } = worked;
  if (!isSamePreview(stored, regrade.stored)) {
    await holdAsIs(tx, regrade);
    await saveRegradePreview(tx, regrade, { stored, isRenewed: true });
    return 'renewed';
  }
  const { changed, declined } = await writeMarks(tx, puzzle, { ...regrade, stored });
  await holdAsIs(tx, regrade);
  await saveRegradeDecided(tx, regradeId, 'applied');
  if (config().pauseBeforeCommitMs > 0) await pauseForTests(regradeId);
  await logChanges(tx, regrade, { changed, declined });
  return 'applied';
}

// Held only for the end, so that a host who settles something meanwhile does not wait for all of it: that
// word sets the regrade back, and then nothing of it is written.
async function holdAsIs(tx: Tx, { id, scope }: RegradeRecord): Promise<void> {
  const held = await holdRegrade(tx, id);
  if (held?.state !== 'applying' || held.scope.round !== scope.round) throw new MarksMoved();
}

interface ToWrite extends Omit<RegradeRecord, 'stored'> {
  readonly stored: StoredPreview;
}

async function writeMarks(
  tx: Tx,
  puzzle: PuzzleRecord,
  regrade: ToWrite,
): Promise<{ changed: MarkChange[]; declined: number }> {
  const { preview, expected } = regrade.stored;
  const chosen = new Set(answersToRegrade(preview, new Set(regrade.agreed)));
  const declined = new Set(preview.changes.map((one) => one.answerId).filter((id) => !chosen.has(id)));
  const told = new Map(expected.map((one) => [one[0], one]));
  const changed: MarkChange[] = [];
  for await (const page of judgedPages(tx, puzzle, regrade.scope.answers)) {
    const next = page
      .filter(({ answer }) => !declined.has(answer.id))
      .filter((one) => {
        if (!isAsTold(one, told.get(one.answer.id))) throw new MarksMoved();
        return one.next !== null && !isSameContent(one.program ?? one.mark, one.next);
      });
    if (next.length === 0) continue;
    const solverIds = [...new Set(next.map(({ answer }) => answer.solverId))];
    await lockSolvers(tx, solverIds);
    await refuseMoved(tx, next);
    const marks = next.flatMap((one) => (one.next === null ? [] : [{ ...one.next, regradeId: regrade.id }]));
    changed.push(...(await appendMarks(tx, marks)));
    await renewStandings(tx, puzzle, solverIds);
  }
  return { changed, declined: declined.size };
}

/** What is written is what was previewed: a changed mark as it was told, every other as it is. */
function isAsTold(
  { answer, mark, program, next }: JudgedAnswer,
  told: StoredPreview['expected'][number] | undefined,
): boolean {
  if (next === null) return told === undefined;
  if (told !== undefined) return isDeepStrictEqual(expectedMark(answer.id, mark.id, next), told);
  return !isOtherMark(program ?? mark, next);
}

/** Is there anything to tell apart from the former mark: versions, flags or explanation? */
function isSameContent(before: MarkRecord, next: NewMark): boolean {
  const { id: _, isCurrent: __, createdAt: ___, regradeId: ____, overrule: _____, ...former } = before;
  const { regradeId: ______, overrule: _______, ...later } = next;
  // As it comes back from the database.
  return isDeepStrictEqual(JSON.parse(JSON.stringify(later)), JSON.parse(JSON.stringify(former)));
}

// Withdrawing, overruling and marking hold the solver too: what is in force now stays so until we are done.
async function refuseMoved(tx: Tx, next: readonly JudgedAnswer[]): Promise<void> {
  const ids = next.map(({ answer }) => answer.id);
  const marks = await loadMarksInForce(tx, ids);
  if (next.some(({ answer, mark }) => marks.get(answer.id)?.id !== mark.id)) throw new MarksMoved();
}

async function logChanges(
  tx: Tx,
  { id, puzzleId, scope }: RegradeRecord,
  { changed, declined }: { readonly changed: readonly MarkChange[]; readonly declined: number },
): Promise<void> {
  const parts = Math.max(1, Math.ceil(changed.length / CHANGES_AN_ENTRY));
  for (let part = 1; part <= parts; part += 1) {
    const own = changed.slice((part - 1) * CHANGES_AN_ENTRY, part * CHANGES_AN_ENTRY);
    const details = { regrade: id, part, parts, declined, changed: [...own] };
    await appendLog(tx, { kind: 'regrade-applied', puzzleId, memberId: scope.saidBy, details });
  }
}

// For the test that kills workers between "marks written" and "regrade committed": says that it is there.
async function pauseForTests(regradeId: number): Promise<void> {
  log().info({ regradeId }, 'pausing before the regrade is committed');
  await sleep(config().pauseBeforeCommitMs);
}
