// A viewer sends an answer: stored as received, its time the database's, and acknowledged only when
// committed. Nothing is judged here, and nothing that is told back depends on a verdict (rule T2).

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { log } from '#lib/machine/log.ts';
import { deviceHash, isToken, receiptHash, receiptTokenFor } from '#lib/machine/tokens.ts';
import { type NameReason, parseName } from '#lib/people/names.ts';
import { stateAt } from '#lib/puzzle/puzzle-state.ts';
import { toldRevision } from '#lib/puzzle/revision-seen.ts';
import { ring } from '#lib/queue/enqueue.ts';
import { readText } from '#lib/reading/read-text.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { appendAnswer, type Channel, findByClientKey } from '#lib/store/answers.ts';
import { db, inTransaction, type Tx } from '#lib/store/client.ts';
import { listFormerTerms } from '#lib/store/former-terms.ts';
import { appendLog } from '#lib/store/log.ts';
import { holdClose } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle, type PuzzleRecord } from '#lib/store/puzzles.ts';
import { addIdentities, createSolver, findSolver, type Identity, renameSolver } from '#lib/store/solvers.ts';
import { isUniqueViolation } from '#lib/store/unique-violation.ts';

/** Longest text that is stored, in UTF-16 units; reading cuts at 4,000 and says so (rule R7). */
export const LONGEST_TEXT = 10_000;

/** What a viewer sends. Tokens as the viewer holds them; null where there is none. */
export interface Submission {
  readonly slug: string;
  readonly text: string;
  /** The line of the reading that was meant (rule R8); null leaves it open. */
  readonly meant: readonly string[] | null;
  /** Name as typed; empty for none. */
  readonly name: string;
  /** The sender's own random key: 22 characters of base64url, fresh for every new sending. */
  readonly clientKey: string;
  readonly channel: Exclude<Channel, 'comment'>;
  readonly device: string | null;
  readonly receipt: string | null;
  readonly signin: { readonly issuer: string; readonly subject: string } | null;
  readonly locale: string | null;
  /** Revision of the terms that the sender's page showed, as it came (rule A6); a wrong word is none. */
  readonly seen?: unknown;
}

/** The acknowledgement. */
export interface Submitted {
  readonly answerId: number;
  /** Opens the receipt. */
  readonly token: string;
  readonly receivedAt: Date;
  /** Received at or after the close: kept, does not count. */
  readonly isLate: boolean;
  /** The same sending had arrived before. */
  readonly isRepeat: boolean;
}

/** Why an answer is not taken. */
export type SubmitReason =
  | { readonly code: 'unknown-puzzle' }
  | { readonly code: 'not-open-yet'; readonly opensAt: Date | null }
  | { readonly code: 'over'; readonly state: 'revealed' | 'void' }
  | { readonly code: 'text-empty' }
  | { readonly code: 'text-too-long'; readonly length: number; readonly most: number }
  | { readonly code: 'meant-not-read' }
  | { readonly code: 'bad-client-key' }
  | { readonly code: 'key-used-for-another' }
  | { readonly code: 'name'; readonly reason: NameReason };

function reasonAgainst(puzzle: PuzzleRecord): SubmitReason | null {
  const state = stateAt(puzzle, puzzle.now);
  if (state === 'draft' || state === 'verified') return { code: 'unknown-puzzle' };
  if (state === 'published') return { code: 'unknown-puzzle' };
  if (state === 'revealed' || state === 'void') return { code: 'over', state };
  return null;
}

/** The line that was meant must be one of those that were shown for the text, in the position that was shown. */
async function isAmongReadings(puzzle: PuzzleRecord, submission: Submission): Promise<boolean> {
  const { text, meant } = submission;
  if (meant === null) return true;
  const seen = toldRevision(submission.seen, puzzle.revision);
  const former = seen === puzzle.revision ? [] : await listFormerTerms(db(), puzzle);
  const shown = former.filter(({ revision }) => seen === null || seen === revision).map(({ terms }) => terms);
  const possible = seen === null || seen === puzzle.revision ? [puzzle.terms, ...shown] : shown;
  return possible.some(({ fen }) => isReadingAt(fen, text, meant));
}

function isReadingAt(fen: string, text: string, meant: readonly string[]): boolean {
  const position = parseFen(fen);
  if (!position.ok) throw new Error(`The stored position cannot be read: ${fen}`);
  const wanted = meant.join(' ');
  return readText({ position: position.value, text }).readings.some(
    (reading) => reading.line.map((move) => move.uci).join(' ') === wanted,
  );
}

// PostgreSQL keeps neither NUL nor halves of surrogate pairs.
function storable(text: string): string {
  return text.replaceAll('\0', '\ufffd').toWellFormed();
}

function identitiesOf(submission: Submission): Identity[] {
  const found: Identity[] = [];
  if (submission.signin !== null)
    found.push({ kind: 'signin', key: `${submission.signin.issuer}\n${submission.signin.subject}` });
  if (submission.receipt !== null && isToken(submission.receipt))
    found.push({ kind: 'receipt', key: receiptHash(submission.receipt) });
  if (submission.device !== null) found.push({ kind: 'device', key: deviceHash(submission.device) });
  return found;
}

/** The same key again: the same receipt for the same text, a refusal for another. */
async function findRepeat(
  tx: Tx,
  puzzle: PuzzleRecord,
  submission: Submission,
): Promise<Result<Submitted, SubmitReason> | null> {
  const former = await findByClientKey(tx, submission.clientKey);
  if (former === null) return null;
  const isSame = former.puzzleId === puzzle.id && former.text === storable(submission.text);
  if (!isSame) return refuse({ code: 'key-used-for-another' });
  const isLate = puzzle.closesAt !== null && former.receivedAt.getTime() >= puzzle.closesAt.getTime();
  const token = tokenOf(submission, former.receiptHash);
  return ok({ answerId: former.id, token, receivedAt: former.receivedAt, isLate, isRepeat: true });
}

// A change goes on under the receipt it was made from; a first answer gets a receipt of its own.
function tokenOf(submission: Submission, stored: string | null): string {
  const given = submission.receipt;
  const isGiven = given !== null && isToken(given) && (stored === null || receiptHash(given) === stored);
  return isGiven ? given : receiptTokenFor(submission.clientKey);
}

async function store(
  puzzle: PuzzleRecord,
  submission: Submission,
  name: string | null,
): Promise<Result<Submitted, SubmitReason>> {
  return inTransaction(async (tx) => {
    const repeat = await findRepeat(tx, puzzle, submission);
    if (repeat !== null) return repeat;
    const identities = identitiesOf(submission);
    const known = await findSolver(tx, puzzle.showId, identities);
    const isSample = puzzle.episode.isSample;
    const solverId = known ?? (await createSolver(tx, { showId: puzzle.showId, name, isSample }));
    if (known !== null && name !== null) await renameSolver(tx, solverId, name);
    const knowsReceipt =
      known !== null &&
      submission.receipt !== null &&
      (await findSolver(
        tx,
        puzzle.showId,
        identities.filter((one) => one.kind === 'receipt'),
      )) === known;
    const token = knowsReceipt ? tokenOf(submission, null) : receiptTokenFor(submission.clientKey);
    await addIdentities(tx, puzzle.showId, solverId, [
      ...identities.filter((one) => one.kind !== 'receipt'),
      { kind: 'receipt', key: receiptHash(token) },
    ]);
    await holdClose(tx, puzzle.id);
    const stored = await appendAnswer(tx, {
      puzzleId: puzzle.id,
      solverId,
      text: storable(submission.text),
      name,
      meant: submission.meant,
      channel: submission.channel,
      clientKey: submission.clientKey,
      receiptHash: receiptHash(token),
      locale: submission.locale,
      seenRevision: toldRevision(submission.seen, puzzle.revision),
    });
    await appendLog(tx, {
      kind: 'answer-received',
      puzzleId: puzzle.id,
      answerId: stored.id,
      details: { solver: solverId, channel: submission.channel, late: stored.isLate },
    });
    return ok({
      answerId: stored.id,
      token,
      receivedAt: stored.receivedAt,
      isLate: stored.isLate,
      isRepeat: false,
    });
  });
}

/** Takes an answer. Of several sendings with one key, at once or later, one is stored. */
export async function submitAnswer(submission: Submission): Promise<Result<Submitted, SubmitReason>> {
  if (!isToken(submission.clientKey)) return refuse({ code: 'bad-client-key' });
  if (submission.text.trim() === '') return refuse({ code: 'text-empty' });
  if (submission.text.length > LONGEST_TEXT)
    return refuse({ code: 'text-too-long', length: submission.text.length, most: LONGEST_TEXT });
  const name = parseName(submission.name);
  if (!name.ok) return refuse({ code: 'name', reason: name.reason });
  const puzzle = await loadPuzzle(db(), { slug: submission.slug });
  if (puzzle === null) return refuse({ code: 'unknown-puzzle' });
  const against = reasonAgainst(puzzle);
  if (against !== null) return refuse(against);
  if (!(await isAmongReadings(puzzle, submission))) return refuse({ code: 'meant-not-read' });

  let stored: Result<Submitted, SubmitReason>;
  try {
    stored = await store(puzzle, submission, name.value);
  } catch (error) {
    // Two sendings with one key at once: the other one was first, so this is the repeat.
    if (!isUniqueViolation(error)) throw error;
    stored = await store(puzzle, submission, name.value);
  }
  if (stored.ok && !stored.value.isRepeat) await ringBell(puzzle.id);
  return stored;
}

// After the commit: inside it, every sender would wait for the one row of the bell. A bell that is
// not rung is made good by the worker's next beat.
async function ringBell(puzzleId: number): Promise<void> {
  try {
    await ring(db(), 'mark-answers', { puzzleId });
  } catch (error) {
    log().warn({ puzzleId, problem: String(error) }, 'the bell was not rung');
  }
}
