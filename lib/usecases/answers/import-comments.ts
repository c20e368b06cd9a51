// Comments from elsewhere become answers. The upload is stored first, as bytes; a job takes it in, in
// batches that can be begun again: what is known adds nothing, another text under a known id is kept
// as a further version and changes no answer (rule T3).

import { type CommentRecord, commentKey, type RecordReason } from '#lib/intake/comment-record.ts';
import type { ColumnMap } from '#lib/intake/map-comment-rows.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { sha256 } from '#lib/machine/hash.ts';
import { tameName } from '#lib/people/names.ts';
import { stateAt } from '#lib/puzzle/puzzle-state.ts';
import { enqueue, ring } from '#lib/queue/enqueue.ts';
import { appendAnswer } from '#lib/store/answers.ts';
import { databaseNow, db, inTransaction, type Tx } from '#lib/store/client.ts';
import { appendComment, countOfImport, findKnownComments } from '#lib/store/comments.ts';
import {
  appendImport,
  ensureSource,
  type ImportFormat,
  type ImportRecord,
  loadImport,
  lockImport,
  saveImported,
} from '#lib/store/imports.ts';
import { appendLog } from '#lib/store/log.ts';
import { loadPuzzle, type PuzzleRecord } from '#lib/store/puzzles.ts';
import { addIdentities, createSolver, findSolver } from '#lib/store/solvers.ts';
import { readUpload, type UploadReason } from './read-upload.ts';

/** An upload to be kept and taken in. */
export interface CommentsUpload {
  readonly puzzleId: number;
  readonly showId: number;
  readonly memberId: number | null;
  readonly sourceName: string;
  readonly format: ImportFormat;
  readonly fileName: string | null;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly columns: ColumnMap | null;
  /** The host's word for comments without a time (rule P2). */
  readonly timeWord: 'before' | 'after' | 'unknown';
  /** When the source was read off; null where that is now. */
  readonly exportedAt: Date | null;
  readonly zone: string;
}

/** Why nothing was stored. */
export type ImportReason =
  | UploadReason
  | { readonly code: 'unknown-puzzle' }
  | { readonly code: 'not-published' }
  | { readonly code: 'no-comments' };

const BATCH = 200;
const MOST_REFUSED_KEPT = 500;
const LONGEST_SOURCE_NAME = 80;
const LONGEST_KEYED_AUTHOR = 400;

/** The key of a comment as stored: short, whatever the source's id is. */
export function externalIdOf(key: string): string {
  return sha256(key);
}

/** Reads the upload through once, so that a damaged one stores nothing; then keeps it and asks for the rest. */
export async function importComments(upload: CommentsUpload): Promise<Result<number, ImportReason>> {
  const puzzle = await loadPuzzle(db(), { id: upload.puzzleId });
  if (puzzle === null || puzzle.showId !== upload.showId) return refuse({ code: 'unknown-puzzle' });
  const state = stateAt(puzzle, puzzle.now);
  if (state === 'draft' || state === 'verified') return refuse({ code: 'not-published' });
  const exportedAt = upload.exportedAt ?? puzzle.now;
  const opened = await readUpload({ ...upload, frame: { exportedAt, zone: upload.zone } });
  if (!opened.ok) return opened;
  let comments = 0;
  for await (const one of opened.value.rows) {
    if (!one.ok) return one;
    if (one.value.record !== null) comments += 1;
  }
  if (comments === 0) return refuse({ code: 'no-comments' });
  const columns = { map: opened.value.columns, zone: upload.zone };
  return inTransaction(async (tx) => {
    const name = upload.sourceName.trim().slice(0, LONGEST_SOURCE_NAME) || upload.format;
    const sourceId = await ensureSource(tx, upload.showId, name);
    const { puzzleId, format, fileName, bytes, timeWord, memberId } = upload;
    const hash = sha256(bytes);
    const importId = await appendImport(tx, {
      puzzleId,
      sourceId,
      format,
      fileName,
      bytes,
      hash,
      columns,
      timeWord,
      exportedAt,
      memberId,
    });
    await enqueue(tx, 'import-comments', { importId });
    return ok(importId);
  });
}

/** Takes a stored upload in. Killed and begun again, it goes on where it was: known comments add nothing. */
export async function takeInComments(importId: number): Promise<void> {
  const stored = await loadImport(db(), importId);
  if (stored === null || stored.state !== 'waiting' || stored.bytes === null) return;
  const puzzle = await loadPuzzle(db(), { id: stored.puzzleId });
  if (puzzle === null) return;
  const { map, zone } = parseColumns(stored.columns);
  const frame = { exportedAt: stored.exportedAt ?? (await databaseNow(db())), zone };
  const opened = await readUpload({ bytes: stored.bytes, format: stored.format, columns: map, frame });
  const refused: RecordReason[] = [];
  let rows = 0;
  let batch: CommentRecord[] = [];
  const isBroken = !opened.ok;
  for await (const one of opened.ok ? opened.value.rows : []) {
    if (!one.ok) break;
    if (one.value.record === null) {
      if (refused.length < MOST_REFUSED_KEPT) refused.push(one.value.reason);
      continue;
    }
    rows += 1;
    batch.push(one.value.record);
    if (batch.length < BATCH) continue;
    await takeInBatch(stored, puzzle, batch);
    batch = [];
  }
  if (batch.length > 0) await takeInBatch(stored, puzzle, batch);
  await inTransaction((tx) => endImport(tx, stored, { rows, refused, isBroken }));
}

async function takeInBatch(
  stored: ImportRecord,
  puzzle: PuzzleRecord,
  batch: readonly CommentRecord[],
): Promise<void> {
  await inTransaction(async (tx) => {
    if (!(await lockImport(tx, stored.id))) return;
    const ids = batch.map((record) => externalIdOf(commentKey(record)));
    const known = await findKnownComments(tx, stored.sourceId, puzzle.id, ids);
    for (const [place, record] of batch.entries()) {
      const externalId = ids[place] ?? '';
      const former = known.get(externalId);
      if (former !== undefined && former.text === record.text) continue;
      const version = (former?.version ?? 0) + 1;
      const answerId = version === 1 ? await becomeAnswer(tx, { stored, puzzle, record }) : null;
      const { text, link } = record;
      await appendComment(tx, {
        ...{
          sourceId: stored.sourceId,
          importId: stored.id,
          puzzleId: puzzle.id,
          externalId,
          version,
          text,
          link,
          answerId,
        },
        author: record.author ?? '',
        statedFrom: record.at?.from ?? null,
        statedTo: record.at?.to ?? null,
      });
      known.set(externalId, { externalId, version, text });
    }
  }, 60_000);
  await ring(db(), 'mark-answers', { puzzleId: puzzle.id });
}

// The show's own voices never answer (rule P4): their comments are kept, and no more.
async function becomeAnswer(
  tx: Tx,
  from: {
    readonly stored: ImportRecord;
    readonly puzzle: PuzzleRecord;
    readonly record: CommentRecord;
  },
): Promise<number | null> {
  const { stored, puzzle, record } = from;
  const author = record.author ?? '';
  if (puzzle.show.ownVoices.some((voice) => voice.normalize('NFC') === author)) return null;
  const { showId } = puzzle;
  const name = tameName(author);
  const identity = { kind: 'author', key: authorKey(stored.sourceId, author) } as const;
  // Without an author nobody can be known again: every such comment is a person of its own.
  const known = author === '' ? null : await findSolver(tx, showId, [identity]);
  const isSample = puzzle.episode.isSample;
  const solverId = known ?? (await createSolver(tx, { showId, name, isSample }));
  if (known === null && author !== '') await addIdentities(tx, showId, solverId, [identity]);
  // Seen when it was uploaded: what a worker takes in after the reveal may have been there before it.
  const isSeenLate = puzzle.revealedAt !== null && stored.createdAt >= puzzle.revealedAt;
  const flag = isSeenLate ? 'edited-unseen' : 'edited';
  const { id } = await appendAnswer(tx, {
    ...{ puzzleId: puzzle.id, solverId, text: record.text, name, meant: null, channel: 'comment' as const },
    ...{ clientKey: null, receiptHash: null, locale: null, isReply: record.isReply },
    statedFrom: record.at?.from ?? null,
    statedTo: record.at?.to ?? null,
    timeWord: record.at === null ? stored.timeWord : null,
    intakeFlags: record.isEdited ? [flag] : [],
  });
  return id;
}

// What the database cannot index as it is stands there by its hash, as exact as the text itself.
function authorKey(sourceId: number, author: string): string {
  return `${sourceId}\n${author.length <= LONGEST_KEYED_AUTHOR ? author : `sha256 ${sha256(author)}`}`;
}

async function endImport(
  tx: Tx,
  stored: ImportRecord,
  end: { readonly rows: number; readonly refused: readonly RecordReason[]; readonly isBroken: boolean },
): Promise<void> {
  // The same job, handed out twice, is told once.
  if (!(await lockImport(tx, stored.id))) return;
  const { added, edited } = await countOfImport(tx, stored.id);
  const known = end.rows - added - edited;
  const state = end.isBroken ? 'failed' : 'done';
  await saveImported(tx, stored.id, {
    state,
    newCount: added,
    knownCount: known,
    editedCount: edited,
    refused: end.refused,
  });
  const details = { import: stored.id, added, known, edited, refused: end.refused.length };
  const { puzzleId, memberId } = stored;
  await appendLog(tx, { kind: 'comments-imported', puzzleId, memberId, details });
}

function parseColumns(stored: unknown): { readonly map: ColumnMap | null; readonly zone: string } {
  if (typeof stored !== 'object' || stored === null) return { map: null, zone: 'UTC' };
  const zone: unknown = Reflect.get(stored, 'zone');
  const map: unknown = Reflect.get(stored, 'map');
  return { map: isColumnMap(map) ? map : null, zone: typeof zone === 'string' ? zone : 'UTC' };
}

function isColumnMap(value: unknown): value is ColumnMap {
  return typeof value === 'object' && value !== null && typeof Reflect.get(value, 'text') === 'number';
}
