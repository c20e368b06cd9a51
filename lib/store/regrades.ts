// Regrades: a change of many marks that is previewed, then applied or cancelled as a whole (rule A7).
// At most one of a puzzle is open; the partial index `regrade_one_open` sees to it.

import type { RegradePreview } from '#lib/marking/regrade.ts';
import type { Tx } from './client.ts';
import type { Regrade as StoredRegrade } from './generated/client.ts';
import { toJson } from './json.ts';
import { oneOf } from './one-of.ts';

const STATES = ['waiting', 'previewed', 'applying', 'applied', 'cancelled'] as const;
export type RegradeState = (typeof STATES)[number];

/** What is marked again, and which preview of it is meant. */
export interface RegradeScope {
  readonly v: 1;
  readonly answers: 'all' | readonly number[];
  /** Number of the preview from 1; it rises whenever the marks have to be worked out anew. */
  readonly round: number;
  /** The host said yes to a preview that no longer held. */
  readonly isRenewed: boolean;
  /** Who said yes; null before. */
  readonly saidBy: number | null;
  /** How often the book was asked since the last word. */
  readonly asks: number;
}

/** A new mark as it was worked out: number of the answer, of its mark in force, then points, p, r and move. */
export type ExpectedMark = readonly [number, number, number, number, number, number | null];

/** The stored preview: what the host reads, and what the marks written must be equal to. */
export interface StoredPreview {
  readonly v: 1;
  readonly preview: RegradePreview;
  readonly expected: readonly ExpectedMark[];
  /** Answers that could not be judged; they keep their marks. */
  readonly unjudged: number;
}

/** A regrade as stored. */
export interface RegradeRecord {
  readonly id: number;
  readonly puzzleId: number;
  readonly scope: RegradeScope;
  /** The host's words; empty where the program asked by itself. */
  readonly reason: string;
  readonly state: RegradeState;
  /** Null while it is worked out. */
  readonly stored: StoredPreview | null;
  readonly done: number;
  readonly total: number;
  readonly agreed: readonly number[];
  readonly memberId: number | null;
  /** Sign-in name of who asked last; null for the program, and after the member was removed. */
  readonly by: string | null;
  readonly createdAt: Date;
  readonly decidedAt: Date | null;
}

// Written by this program; a version that it does not know is refused.
function parseStored<T extends { readonly v: 1 }>(stored: unknown): T | null {
  if (typeof stored !== 'object' || stored === null || Object.keys(stored).length === 0) return null;
  if (Reflect.get(stored, 'v') !== 1) throw new Error('A stored regrade has a version that is not known.');
  return stored as T;
}

const WITH_MEMBER = { member: { select: { signInName: true } } } as const;

function toRegrade(row: StoredRegrade & { readonly member: { signInName: string } | null }): RegradeRecord {
  const scope = parseStored<RegradeScope>(row.scope);
  if (scope === null) throw new Error(`Regrade ${row.id} has no scope.`);
  return {
    id: row.id,
    puzzleId: row.puzzleId,
    scope,
    reason: row.reason,
    state: oneOf(STATES, row.state),
    stored: parseStored<StoredPreview>(row.differences),
    done: row.done,
    total: row.total,
    agreed: row.agreed,
    memberId: row.memberId,
    by: row.member?.signInName ?? null,
    createdAt: row.createdAt,
    decidedAt: row.decidedAt,
  };
}

/** A regrade by its number; null where there is none. */
export async function loadRegrade(tx: Tx, id: number): Promise<RegradeRecord | null> {
  const row = await tx.regrade.findUnique({ where: { id }, include: WITH_MEMBER });
  return row === null ? null : toRegrade(row);
}

/** The same, held until the end of the transaction: deciding and writing wait for each other here. */
export async function holdRegrade(tx: Tx, id: number): Promise<RegradeRecord | null> {
  await tx.$queryRaw`select id from regrade where id = ${id} for update`;
  return loadRegrade(tx, id);
}

/** The puzzle's regrade that is not decided yet; null where there is none. */
export async function loadOpenRegrade(tx: Tx, puzzleId: number): Promise<RegradeRecord | null> {
  const row = await tx.regrade.findFirst({ where: { puzzleId, decidedAt: null }, include: WITH_MEMBER });
  return row === null ? null : toRegrade(row);
}

/** Decided regrades of a puzzle with how many marks they wrote, the latest first. */
export async function listDecidedRegrades(
  tx: Tx,
  puzzleId: number,
  most: number,
): Promise<(RegradeRecord & { readonly marks: number })[]> {
  const rows = await tx.regrade.findMany({
    where: { puzzleId, decidedAt: { not: null } },
    include: { ...WITH_MEMBER, _count: { select: { marks: true } } },
    orderBy: { id: 'desc' },
    take: most,
  });
  return rows.map((row) => ({ ...toRegrade(row), marks: row._count.marks }));
}

/** What a regrade is asked for. */
export interface NewRegrade {
  readonly puzzleId: number;
  readonly answers: 'all' | readonly number[];
  readonly reason: string;
  readonly memberId: number | null;
}

/** Opens a regrade, or takes more into the one that is open, which is then worked out anew. Gives its number. */
export async function openRegrade(tx: Tx, asked: NewRegrade): Promise<number> {
  const { puzzleId, answers, reason, memberId } = asked;
  for (;;) {
    const open = await loadOpenRegrade(tx, puzzleId);
    if (open !== null) {
      const held = await holdRegrade(tx, open.id);
      // Decided while we waited for it.
      if (held === null || held.decidedAt !== null) continue;
      const words = [...new Set([...held.reason.split('; '), reason])].filter((one) => one !== '');
      await workOutAnew(tx, held, {
        answers: joined(held.scope.answers, answers),
        reason: words.join('; ').slice(0, 600),
        memberId: memberId ?? held.memberId,
      });
      return held.id;
    }
    const scope: RegradeScope = {
      v: 1,
      answers: sorted(answers),
      round: 1,
      isRenewed: false,
      saidBy: null,
      asks: 0,
    };
    const made = await tx.$queryRaw<{ id: number }[]>`
      insert into regrade (puzzle_id, scope, reason, state, differences, member_id)
      values (${puzzleId}, ${JSON.stringify(scope)}::jsonb, ${reason}, 'waiting', '{}', ${memberId})
      on conflict (puzzle_id) where decided_at is null do nothing returning id`;
    if (made[0] !== undefined) return made[0].id;
  }
}

function sorted(answers: NewRegrade['answers']): NewRegrade['answers'] {
  return answers === 'all' ? answers : [...new Set(answers)].sort((a, b) => a - b);
}

function joined(a: NewRegrade['answers'], b: NewRegrade['answers']): NewRegrade['answers'] {
  return a === 'all' || b === 'all' ? 'all' : sorted([...a, ...b]);
}

/** Back to the beginning, with a new number of the preview. The regrade is held by the caller. */
export async function workOutAnew(
  tx: Tx,
  { id, scope }: RegradeRecord,
  changed: {
    readonly answers?: NewRegrade['answers'];
    readonly reason?: string;
    readonly memberId?: number | null;
    readonly isRenewed?: boolean;
  } = {},
): Promise<void> {
  const { answers = scope.answers, isRenewed = scope.isRenewed, reason, memberId } = changed;
  const next: RegradeScope = { ...scope, answers, isRenewed, round: scope.round + 1, asks: 0 };
  await tx.regrade.update({
    where: { id },
    data: {
      scope: toJson(next),
      state: 'waiting',
      differences: {},
      done: 0,
      total: 0,
      ...(reason === undefined ? {} : { reason }),
      ...(memberId === undefined ? {} : { memberId }),
    },
  });
}

/** Notes that the book was asked once more; false where it is no longer this preview that is worked out. */
export async function saveRegradeAsked(tx: Tx, { id, scope }: RegradeRecord): Promise<boolean> {
  const count = await tx.$executeRaw`
    update regrade set scope = jsonb_set(scope, '{asks}', to_jsonb(${scope.asks + 1}::int))
    where id = ${id} and state = 'waiting' and (scope ->> 'round')::int = ${scope.round}`;
  return count > 0;
}

/** Notes how far the work has come; false where it is no longer this preview that is worked out. */
export async function saveRegradeProgress(
  tx: Tx,
  { id, state, scope }: RegradeRecord,
  { done, total }: { readonly done: number; readonly total: number },
): Promise<boolean> {
  const count = await tx.$executeRaw`
    update regrade set done = ${done}, total = ${total}
    where id = ${id} and state = ${state} and (scope ->> 'round')::int = ${scope.round}`;
  return count > 0;
}

/**
 * Stores a preview for the host to decide on; where it takes the place of one that the host said yes to, it
 * gets a number of its own. The regrade is held by the caller.
 */
export async function saveRegradePreview(
  tx: Tx,
  { id, scope }: RegradeRecord,
  { stored, isRenewed }: { readonly stored: StoredPreview; readonly isRenewed: boolean },
): Promise<void> {
  const next: RegradeScope = isRenewed ? { ...scope, isRenewed, round: scope.round + 1 } : scope;
  await tx.regrade.update({
    where: { id },
    data: { state: 'previewed', differences: toJson(stored), scope: toJson(next) },
  });
}

/** The host says yes to the preview, and to these changes one by one. The regrade is held by the caller. */
export async function saveRegradeAgreed(
  tx: Tx,
  { id, scope }: RegradeRecord,
  { agreed, memberId }: { readonly agreed: readonly number[]; readonly memberId: number },
): Promise<void> {
  const next: RegradeScope = { ...scope, isRenewed: false, saidBy: memberId };
  await tx.regrade.update({
    where: { id },
    data: { state: 'applying', agreed: [...agreed], scope: toJson(next), done: 0 },
  });
}

/** Ends a regrade. */
export async function saveRegradeDecided(tx: Tx, id: number, state: 'applied' | 'cancelled'): Promise<void> {
  await tx.$executeRaw`
    update regrade set state = ${state}, decided_at = clock_timestamp() where id = ${id}`;
}

/** Regrades that a worker can go on with: those to be written, and those that wait for nothing of the book. */
export async function listRegradesToRun(tx: Tx): Promise<number[]> {
  const rows = await tx.$queryRaw<{ id: number }[]>`
    select id from regrade
    where state = 'applying' or (state = 'waiting' and not exists (
      select from want where want.puzzle_id = regrade.puzzle_id and want.answer_id is null))
    order by id`;
  return rows.map((row) => row.id);
}

/** Puzzles of a show with a regrade that waits for its host. */
export async function listPuzzlesToDecide(tx: Tx, showId: number): Promise<Set<number>> {
  const rows = await tx.regrade.findMany({
    where: { state: 'previewed', puzzle: { showId } },
    select: { puzzleId: true },
  });
  return new Set(rows.map((row) => row.puzzleId));
}
