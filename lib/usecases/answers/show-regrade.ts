// The page of a regrade: what it would change, falls first, and what has become of earlier ones (rule A7).

import type { Outcome } from '#lib/marking/mark.ts';
import type { GradedMark, RegradeChange } from '#lib/marking/regrade.ts';
import type { Standing } from '#lib/store/answers.ts';
import { db } from '#lib/store/client.ts';
import { countInForce, loadMarksInForce, loadWhose } from '#lib/store/marks-in-force.ts';
import {
  listDecidedRegrades,
  loadOpenRegrade,
  type RegradeRecord,
  type RegradeState,
  type StoredPreview,
} from '#lib/store/regrades.ts';
import { hasHostsWants } from '#lib/store/wants.ts';

/** What the host reads of a mark. */
export interface ToldMark {
  readonly outcome: Outcome;
  readonly atMove: number | null;
  readonly points: number;
  /** Moves that hold, of those needed; null where nobody is told. */
  readonly share: { readonly p: number; readonly r: number } | null;
}

/** One mark that would change, as the host reads it. */
export interface RegradeLine extends Omit<RegradeChange, 'from' | 'to'> {
  readonly name: string | null;
  readonly standing: Standing;
  readonly from: ToldMark;
  readonly to: ToldMark;
}

/** What the worker found. */
export interface ShownPreview {
  /** Changes that need the host's word one by one, falls first; at most 500. */
  readonly asked: readonly RegradeLine[];
  /** Changes that go along with the whole; at most 100 are listed. */
  readonly others: readonly RegradeLine[];
  /** How many there are of each, listed or not. */
  readonly counts: { readonly asked: number; readonly others: number };
  readonly rise: { readonly marks: number; readonly points: number };
  readonly fall: { readonly marks: number; readonly points: number };
  readonly same: number;
  readonly unjudged: number;
  /** Answers under a person's word whose mark by the program would be another one; at most 100. */
  readonly overruled: readonly { readonly answerId: number; readonly name: string | null }[];
}

/** The regrade that is not decided yet. */
export interface OpenRegrade {
  readonly id: number;
  readonly round: number;
  readonly state: RegradeState;
  readonly reason: string;
  readonly by: string | null;
  readonly at: Date;
  /** The host said yes to a preview that no longer held. */
  readonly isRenewed: boolean;
  /** Ticked before, and still to be asked. */
  readonly agreed: readonly number[];
  readonly preview: ShownPreview | null;
}

/** Everything the page shows. */
export interface RegradeView {
  readonly open: OpenRegrade | null;
  /** Answers with a mark. */
  readonly marked: number;
  readonly decided: readonly (Pick<RegradeRecord, 'id' | 'state' | 'reason' | 'by'> & {
    readonly at: Date;
    /** Marks that were written. */
    readonly marks: number;
  })[];
}

const MOST_ASKED = 500;
const MOST_OTHERS = 100;
const MOST_DECIDED = 20;

/** Loads the page of a puzzle that the caller has opened. */
export async function showRegrade(puzzleId: number): Promise<RegradeView> {
  const tx = db();
  const regrade = await loadOpenRegrade(tx, puzzleId);
  const decided = await listDecidedRegrades(tx, puzzleId, MOST_DECIDED);
  return {
    open: regrade === null ? null : await showOpen(regrade),
    marked: await countInForce(tx, puzzleId, 'all'),
    decided: decided.map(({ id, state, reason, by, decidedAt, createdAt, marks }) => ({
      ...{ id, state, reason, by, marks },
      at: decidedAt ?? createdAt,
    })),
  };
}

async function showOpen(regrade: RegradeRecord): Promise<OpenRegrade> {
  const { id, state, reason, by, scope, createdAt, agreed, stored } = regrade;
  const isShown = state === 'previewed' && stored !== null;
  return {
    ...{ id, state, reason, by, at: createdAt, agreed },
    round: scope.round,
    isRenewed: scope.isRenewed,
    preview: isShown ? await showPreview(stored) : null,
  };
}

async function showPreview({ preview, expected, unjudged }: StoredPreview): Promise<ShownPreview> {
  const asked = preview.changes.filter((one) => one.wordFor !== null);
  const others = preview.changes.filter((one) => one.wordFor === null);
  const listed = [...asked.slice(0, MOST_ASKED), ...others.slice(0, MOST_OTHERS)];
  const overruled = preview.overruled.slice(0, MOST_OTHERS);
  const whose = await loadWhose(db(), [...listed.map((one) => one.answerId), ...overruled]);
  const marks = await loadMarksInForce(
    db(),
    listed.map((one) => one.answerId),
  );
  const next = new Map(
    expected.map(([answerId, , points, p, r, atMove]) => [answerId, { points, p, r, atMove }]),
  );
  const toLine = ({ from, to, ...change }: RegradeChange): RegradeLine[] => {
    const who = whose.get(change.answerId);
    const before = marks.get(change.answerId);
    const after = next.get(change.answerId);
    // Withdrawn meanwhile.
    if (who === undefined || before === undefined || after === undefined) return [];
    const points = after.points - change.points;
    return [
      {
        ...change,
        ...who,
        from: toldMark({ ...before, outcome: from, points }),
        to: toldMark({ ...after, outcome: to }),
      },
    ];
  };
  const going = (direction: 'up' | 'down') =>
    preview.changes.filter((one) => one.direction === direction).length;
  return {
    asked: asked.slice(0, MOST_ASKED).flatMap(toLine),
    others: others.slice(0, MOST_OTHERS).flatMap(toLine),
    counts: { asked: asked.length, others: others.length },
    rise: { marks: going('up'), points: preview.pointsUp },
    fall: { marks: going('down'), points: preview.pointsDown },
    same: preview.same,
    unjudged,
    overruled: overruled.map((answerId) => ({ answerId, name: whose.get(answerId)?.name ?? null })),
  };
}

function toldMark({ outcome, atMove, points, p, r }: GradedMark): ToldMark {
  const isInPart = outcome !== 'solved' && outcome !== 'slower' && p > 0;
  return { outcome, atMove, points, share: isInPart ? { p, r } : null };
}

/** The running numbers of an open regrade; `done` where there is none, or it waits for the host. */
export async function watchRegrade(puzzleId: number): Promise<{
  readonly state: 'running' | 'done';
  readonly stage: 'marking' | 'book' | 'writing' | null;
  readonly done: number;
  readonly total: number;
}> {
  const regrade = await loadOpenRegrade(db(), puzzleId);
  if (regrade === null || regrade.state === 'previewed')
    return { state: 'done', stage: null, done: 0, total: 0 };
  // Written at one stroke: there is nothing to count.
  if (regrade.state === 'applying') return { state: 'running', stage: 'writing', done: 0, total: 0 };
  const { done, total } = regrade;
  const isAskingBook = total > 0 && done >= total && (await hasHostsWants(db(), puzzleId));
  return { state: 'running', stage: isAskingBook ? 'book' : 'marking', done, total };
}

/** Whether a regrade of the puzzle waits for the host to decide; what other pages of the desk say of it. */
export async function findOpenRegrade(puzzleId: number): Promise<RegradeState | null> {
  return (await loadOpenRegrade(db(), puzzleId))?.state ?? null;
}
