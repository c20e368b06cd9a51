// The solution book of a puzzle: rows with evidence, proofs kept once.

import type { BookRow } from '#lib/book/book-row.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { parseProof, writeProof } from '#lib/checker/parse-proof.ts';
import type { Proof } from '#lib/checker/proof.ts';
import type { Evidence, ReplyValue } from '#lib/engine/verdict.ts';
import { sha256 } from '#lib/machine/hash.ts';
import type { Tx } from './client.ts';
import type { BookRow as StoredRow } from './generated/client.ts';
import { toJson } from './json.ts';
import { oneOf } from './one-of.ts';

const VERDICTS = ['holds', 'slower', 'slips', 'unclear'] as const;
const CHECKS = ['passed', 'failed', 'too-large', 'not-checkable'] as const;

/**
 * What the verdicts of a book depend on beside position, move and engine, as the key carries it: the
 * budgets, and in win and draw tasks the bounds.
 */
export function budgetsKey(terms: Omit<PuzzleTerms, 'published'>): string {
  const { winBound, slipBound, drawBound, drawSlipBound, proofNodes, budgetNodes } = terms;
  switch (terms.task.kind) {
    case 'mate':
      return `mate ${proofNodes}`;
    case 'win':
      return `win ${winBound}/${slipBound} ${budgetNodes} ${proofNodes}`;
    case 'draw':
      return `draw ${drawBound}/${drawSlipBound} ${budgetNodes} ${proofNodes}`;
  }
}

// Stored as `{kind: 'proof'}` with the tree in a table of its own.
function evidenceOf(stored: StoredRow, proof: Proof | null): Evidence {
  const evidence = stored.evidence as unknown as Evidence;
  return evidence.kind === 'proof' && proof !== null ? { kind: 'proof', proof } : evidence;
}

function toBookRow(row: StoredRow, proof: Proof | null): BookRow {
  return {
    position: row.position,
    movesLeft: row.movesLeft,
    move: row.move,
    verdict: oneOf(VERDICTS, row.verdict),
    mateIn: row.mateIn,
    value: row.value,
    depth: row.depth,
    nodes: Number(row.nodes),
    evidence: evidenceOf(row, proof),
    replies: row.replies as unknown as ReplyValue[],
    adequate: row.adequate,
    evident: row.evident,
    stillWinning: row.stillWinning,
    check: oneOf(CHECKS, row.checkStatus),
    engineVersion: row.engineVersion,
  };
}

/** Which book: the engine version and budgets in use. */
export interface BookVersion {
  readonly engineVersion: string;
  readonly budgets: string;
}

const NO_PROOF: Proof = { v: 1, fen: '', n: 0, nodes: [] };

/**
 * The rows of a book in the order of their making, after row `after`. Proof trees are left out unless
 * asked for: marking needs the verdicts alone, and trees are large.
 */
export async function loadBookRows(
  tx: Tx,
  puzzleId: number,
  version: BookVersion,
  { after = 0, withProofs = false }: { readonly after?: number; readonly withProofs?: boolean } = {},
): Promise<{ rows: BookRow[]; last: number }> {
  const stored = await tx.bookRow.findMany({
    where: { puzzleId, ...version, id: { gt: after } },
    orderBy: { id: 'asc' },
    ...(withProofs ? { include: { proof: true } } : {}),
  });
  const rows = stored.map((row) => toBookRow(row, 'proof' in row ? readProof(row.proof) : NO_PROOF));
  return { rows, last: stored.at(-1)?.id ?? after };
}

function readProof(stored: unknown): Proof | null {
  if (typeof stored !== 'object' || stored === null) return null;
  const parsed = parseProof(JSON.parse(String(Reflect.get(stored, 'body'))));
  return parsed.ok ? parsed.value : null;
}

/** The proof tree behind a verdict; null where it rests on none. */
export async function loadProof(
  tx: Tx,
  puzzleId: number,
  key: { readonly position: string; readonly movesLeft: number | null; readonly move: string },
): Promise<Proof | null> {
  const row = await tx.bookRow.findFirst({
    where: { puzzleId, position: key.position, movesLeft: key.movesLeft, move: key.move },
    orderBy: { id: 'desc' },
    include: { proof: true },
  });
  return readProof(row?.proof);
}

async function saveProofs(tx: Tx, puzzleId: number, rows: readonly BookRow[]): Promise<Map<BookRow, string>> {
  const hashes = new Map<BookRow, string>();
  const bodies = new Map<string, string>();
  for (const row of rows) {
    if (row.evidence.kind !== 'proof') continue;
    const body = writeProof(row.evidence.proof);
    const hash = sha256(body);
    hashes.set(row, hash);
    bodies.set(hash, body);
  }
  const data = [...bodies].map(([hash, body]) => ({ puzzleId, hash, body }));
  if (data.length > 0) await tx.proof.createMany({ data, skipDuplicates: true });
  return hashes;
}

/** Appends rows; those the book has already stay as they are. Gives how many were new. */
export async function appendBookRows(
  tx: Tx,
  puzzleId: number,
  rows: readonly BookRow[],
  budgets: string,
): Promise<number> {
  if (rows.length === 0) return 0;
  const hashes = await saveProofs(tx, puzzleId, rows);
  const proofs = await tx.proof.findMany({
    where: { puzzleId, hash: { in: [...new Set(hashes.values())] } },
    select: { id: true, hash: true },
  });
  const idOf = new Map(proofs.map((proof) => [proof.hash, proof.id]));
  const { count } = await tx.bookRow.createMany({
    skipDuplicates: true,
    data: rows.map((row) => ({
      puzzleId,
      position: row.position,
      movesLeft: row.movesLeft,
      move: row.move,
      verdict: row.verdict,
      mateIn: row.mateIn,
      value: row.value,
      depth: row.depth,
      nodes: row.nodes,
      evidence: toJson(row.evidence.kind === 'proof' ? { kind: 'proof' } : row.evidence),
      proofId: idOf.get(hashes.get(row) ?? '') ?? null,
      checkStatus: row.check,
      replies: toJson(row.replies),
      adequate: [...row.adequate],
      evident: row.evident,
      stillWinning: row.stillWinning,
      engineVersion: row.engineVersion,
      budgets,
    })),
  });
  return count;
}
