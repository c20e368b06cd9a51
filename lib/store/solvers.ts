// Solvers and their identities. A name never identifies.

import type { Tx } from './client.ts';

/** The ways to know a solver again, strongest first: the order in which an answer finds its solver. */
export const IDENTITY_KINDS = ['signin', 'receipt', 'device', 'author'] as const;

export type IdentityKind = (typeof IDENTITY_KINDS)[number];

/** One way to know a solver: the key is hashed by the caller where it is a secret. */
export interface Identity {
  readonly kind: IdentityKind;
  readonly key: string;
}

/** The solver that the strongest of the identities belongs to, joins followed; null where all are new. */
export async function findSolver(
  tx: Tx,
  showId: number,
  identities: readonly Identity[],
): Promise<number | null> {
  for (const kind of IDENTITY_KINDS) {
    const keys = identities.filter((one) => one.kind === kind).map((one) => one.key);
    if (keys.length === 0) continue;
    const found = await tx.solverIdentity.findFirst({
      where: { showId, kind, key: { in: keys } },
      select: { solver: { select: { id: true, joinedIntoId: true } } },
    });
    if (found !== null) return found.solver.joinedIntoId ?? found.solver.id;
  }
  return null;
}

/** Makes a solver. */
export async function createSolver(
  tx: Tx,
  solver: { showId: number; name: string | null; isSample: boolean },
): Promise<number> {
  const row = await tx.solver.create({ data: solver, select: { id: true } });
  return row.id;
}

/** Adds identities; one that somebody has already stays with its owner. */
export async function addIdentities(
  tx: Tx,
  showId: number,
  solverId: number,
  identities: readonly Identity[],
): Promise<void> {
  if (identities.length === 0) return;
  const data = identities.map((one) => ({ showId, solverId, kind: one.kind, key: one.key }));
  await tx.solverIdentity.createMany({ data, skipDuplicates: true });
}

/** The name shown and said from now on. */
export async function renameSolver(tx: Tx, solverId: number, name: string): Promise<void> {
  await tx.solver.update({ where: { id: solverId }, data: { name } });
}

/** Erases the name where none of the solver's answers stands any more. */
export async function eraseNameWithoutAnswers(tx: Tx, solverId: number): Promise<void> {
  await tx.$executeRaw`
    update solver set name = null where id = ${solverId}
      and not exists (select from answer where solver_id = ${solverId} and withdrawn_at is null)`;
}

/** Holds a solver until the end of the transaction: marking and withdrawing wait for each other here. */
export async function lockSolver(tx: Tx, solverId: number): Promise<void> {
  await tx.$queryRaw`select id from solver where id = ${solverId} for no key update`;
}

/** The same for several, in one order, so that two who do so do not wait for each other for ever. */
export async function lockSolvers(tx: Tx, solverIds: readonly number[]): Promise<void> {
  await tx.$queryRaw`
    select id from solver where id = any(${[...solverIds]}) order by id for no key update`;
}
