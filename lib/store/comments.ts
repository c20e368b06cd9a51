// Comments: the first version seen is the fact; another text under the same id is a further version.

import type { Tx } from './client.ts';

/** The newest known version of a comment. */
export interface KnownComment {
  readonly externalId: string;
  readonly version: number;
  readonly text: string;
}

/** What is known already of these comments: the newest version of each. */
export async function findKnownComments(
  tx: Tx,
  sourceId: number,
  puzzleId: number,
  externalIds: readonly string[],
): Promise<Map<string, KnownComment>> {
  const rows = await tx.comment.findMany({
    where: { sourceId, puzzleId, externalId: { in: [...externalIds] } },
    select: { externalId: true, version: true, text: true },
    orderBy: { version: 'asc' },
  });
  return new Map(rows.map((row) => [row.externalId, row]));
}

/** Appends a version of a comment. */
export async function appendComment(
  tx: Tx,
  comment: {
    readonly sourceId: number;
    readonly importId: number;
    readonly puzzleId: number;
    readonly externalId: string;
    readonly version: number;
    readonly author: string;
    readonly text: string;
    readonly statedFrom: Date | null;
    readonly statedTo: Date | null;
    readonly link: string | null;
    readonly answerId: number | null;
  },
): Promise<void> {
  await tx.comment.create({ data: comment });
}

/** What an import has brought so far: new comments, and further versions of known ones. */
export async function countOfImport(
  tx: Tx,
  importId: number,
): Promise<{ readonly added: number; readonly edited: number }> {
  const added = await tx.comment.count({ where: { importId, version: 1 } });
  const edited = await tx.comment.count({ where: { importId, version: { gt: 1 } } });
  return { added, edited };
}
