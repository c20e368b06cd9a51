// Puzzles and their published lines.

import type { PuzzleTerms, SchemeName, Task } from '#lib/book/terms.ts';
import type { Scheme } from '#lib/marking/schemes.ts';
import type { PuzzleMoments } from '#lib/puzzle/puzzle-state.ts';
import { databaseNow, type Tx } from './client.ts';
import { Prisma } from './generated/client.ts';
import { toJson } from './json.ts';
import { oneOf } from './one-of.ts';
import { loadNewestScheme, loadScheme } from './schemes.ts';

const SCHEMES: readonly SchemeName[] = ['full-line', 'key-move'];
const CLAIMS = ['true', 'false', 'unclear'] as const;

/** A puzzle as stored, without its published lines, and the database's time of loading. */
export interface PuzzleRecord extends PuzzleMoments {
  readonly id: number;
  readonly showId: number;
  readonly episodeId: number;
  readonly slug: string;
  readonly title: string;
  readonly task: Task;
  readonly terms: Omit<PuzzleTerms, 'published'>;
  readonly schemeVersion: number;
  readonly countsFirst: boolean;
  readonly howFar: string | null;
  readonly zone: string;
  readonly claim: 'true' | 'false' | 'unclear' | null;
  readonly report: unknown;
  readonly secondOpinion: unknown;
  readonly engineVersion: string | null;
  readonly closedAt: Date | null;
  /** Number of the terms in force (rule A6). */
  readonly revision: number;
  readonly createdBy: number | null;
  readonly createdAt: Date;
  readonly now: Date;
  readonly show: {
    readonly name: string;
    readonly zone: string;
    readonly locale: string;
    readonly ownVoices: readonly string[];
  };
  readonly episode: {
    readonly number: number;
    readonly title: string;
    readonly seasonId: number;
    readonly isSample: boolean;
  };
}

const WITH_PLACE = { show: true, episode: true } satisfies Prisma.PuzzleInclude;
type Row = Prisma.PuzzleGetPayload<{ include: typeof WITH_PLACE }>;

function taskOf(row: { taskKind: string; mateMoves: number | null }): Task {
  const kind = oneOf(['mate', 'win', 'draw'], row.taskKind);
  return kind === 'mate' ? { kind, moves: row.mateMoves ?? 1 } : { kind };
}

function toRecord(row: Row, now: Date): PuzzleRecord {
  const { show, episode } = row;
  return {
    id: row.id,
    showId: row.showId,
    episodeId: row.episodeId,
    slug: row.slug,
    title: row.title,
    task: taskOf(row),
    terms: {
      fen: row.fen,
      task: taskOf(row),
      scheme: oneOf(SCHEMES, row.scheme),
      winBound: row.winBound,
      slipBound: row.slipBound,
      drawBound: row.drawBound,
      drawSlipBound: row.drawSlipBound,
      anyDefence: row.anyDefence,
      mateWritten: row.mateWritten,
      solverMoves: row.solverMoves,
      isStrict: row.isStrict,
      proofNodes: row.proofNodes,
      budgetNodes: row.budgetNodes,
    },
    schemeVersion: row.schemeVersion,
    countsFirst: row.countsFirst,
    howFar: row.howFar,
    zone: row.zone,
    claim: row.claim === null ? null : oneOf(CLAIMS, row.claim),
    report: row.report,
    secondOpinion: row.secondOpinion,
    engineVersion: row.engineVersion,
    opensAt: row.opensAt,
    closesAt: row.closesAt,
    verifiedAt: row.verifiedAt,
    publishedAt: row.publishedAt,
    closedAt: row.closedAt,
    revision: row.revision,
    revealedAt: row.revealedAt,
    voidedAt: row.voidedAt,
    createdBy: row.createdBy,
    createdAt: row.createdAt,
    now,
    show: { name: show.name, zone: show.zone, locale: show.locale, ownVoices: show.ownVoices },
    episode: {
      number: episode.number,
      title: episode.title,
      seasonId: episode.seasonId,
      isSample: episode.isSample,
    },
  };
}

/** Loads a puzzle by number or by slug; null where there is none. */
export async function loadPuzzle(
  tx: Tx,
  which: { readonly id: number } | { readonly slug: string },
): Promise<PuzzleRecord | null> {
  const row = await tx.puzzle.findUnique({ where: which, include: WITH_PLACE });
  return row === null ? null : toRecord(row, await databaseNow(tx));
}

/** All puzzles of a show, newest first. */
export async function listPuzzles(tx: Tx, showId: number): Promise<PuzzleRecord[]> {
  const rows = await tx.puzzle.findMany({ where: { showId }, include: WITH_PLACE, orderBy: { id: 'desc' } });
  const now = await databaseNow(tx);
  return rows.map((row) => toRecord(row, now));
}

/** Puzzles that are published and whose opening has come, the latest opening first. */
export async function listOpened(tx: Tx, most: number): Promise<PuzzleRecord[]> {
  const now = await databaseNow(tx);
  const rows = await tx.puzzle.findMany({
    where: { publishedAt: { not: null }, opensAt: { lte: now } },
    include: WITH_PLACE,
    orderBy: [{ opensAt: 'desc' }, { id: 'desc' }],
    take: most,
  });
  return rows.map((row) => toRecord(row, now));
}

/** The published lines in order; of desk, worker and reveal only. */
export async function loadPublishedLines(tx: Tx, puzzleId: number): Promise<string[]> {
  const rows = await tx.publishedLine.findMany({ where: { puzzleId }, orderBy: { ordinal: 'asc' } });
  return rows.map((row) => row.text);
}

/** The whole terms, published lines included. */
export async function loadTerms(tx: Tx, puzzle: PuzzleRecord): Promise<PuzzleTerms> {
  return { ...puzzle.terms, published: await loadPublishedLines(tx, puzzle.id) };
}

/** The scheme that the puzzle's answers are marked by. */
export function loadPuzzleScheme(tx: Tx, puzzle: PuzzleRecord): Promise<Scheme> {
  const { showId, terms, schemeVersion } = puzzle;
  return loadScheme(tx, { showId, name: terms.scheme, version: schemeVersion });
}

/** What a new puzzle is made of. */
export interface NewPuzzle {
  readonly showId: number;
  readonly episodeId: number;
  readonly slug: string;
  readonly title: string;
  readonly terms: PuzzleTerms;
  readonly opensAt: Date | null;
  readonly closesAt: Date | null;
  readonly zone: string;
  readonly memberId: number | null;
  /** The first answer of a solver counts, not the last (rule P2). */
  readonly countsFirst?: boolean;
}

function columnsOf(terms: PuzzleTerms) {
  return {
    fen: terms.fen,
    taskKind: terms.task.kind,
    mateMoves: terms.task.kind === 'mate' ? terms.task.moves : null,
    scheme: terms.scheme,
    winBound: terms.winBound,
    slipBound: terms.slipBound,
    drawBound: terms.drawBound,
    drawSlipBound: terms.drawSlipBound,
    anyDefence: terms.anyDefence,
    mateWritten: terms.mateWritten,
    solverMoves: terms.solverMoves,
    isStrict: terms.isStrict,
    proofNodes: terms.proofNodes,
    budgetNodes: terms.budgetNodes,
  };
}

function lineRows(published: readonly string[]) {
  return published.map((text, ordinal) => ({ ordinal, text }));
}

/** Saves a draft and gives its number. It is marked by the newest version of its scheme, for good (rule P1). */
export async function createPuzzleRow(tx: Tx, puzzle: NewPuzzle): Promise<number> {
  const scheme = await loadNewestScheme(tx, puzzle.showId, puzzle.terms.scheme);
  const row = await tx.puzzle.create({
    data: {
      showId: puzzle.showId,
      episodeId: puzzle.episodeId,
      slug: puzzle.slug,
      title: puzzle.title,
      ...columnsOf(puzzle.terms),
      schemeVersion: scheme.version,
      countsFirst: puzzle.countsFirst ?? false,
      opensAt: puzzle.opensAt,
      closesAt: puzzle.closesAt,
      zone: puzzle.zone,
      createdBy: puzzle.memberId,
      publishedLines: { create: lineRows(puzzle.terms.published) },
      progress: { create: { state: 'waiting' } },
    },
  });
  return row.id;
}

/** Replaces terms and lines of a draft, under the newest version of its scheme; what was verified no longer holds. */
export async function replaceTerms(
  tx: Tx,
  { id: puzzleId, showId }: Pick<PuzzleRecord, 'id' | 'showId'>,
  terms: PuzzleTerms,
): Promise<void> {
  const scheme = await loadNewestScheme(tx, showId, terms.scheme);
  await tx.publishedLine.deleteMany({ where: { puzzleId } });
  await tx.puzzle.update({
    where: { id: puzzleId },
    data: {
      ...columnsOf(terms),
      schemeVersion: scheme.version,
      verifiedAt: null,
      claim: null,
      secondOpinion: Prisma.DbNull,
      engineVersion: null,
      publishedLines: { create: lineRows(terms.published) },
    },
  });
}

/** What takes force with an amendment (rule A6). */
export interface TermsInForce {
  readonly terms: PuzzleTerms;
  readonly title: string;
  readonly howFar: string | null;
  readonly revision: number;
  readonly claim: 'true' | 'false' | 'unclear';
  readonly report: unknown;
  readonly engineVersion: string;
  readonly overrideReason: string | null;
}

/** Replaces terms, lines and report of a published puzzle; its address, times, scheme and budgets stay. */
export async function putTermsInForce(tx: Tx, puzzleId: number, next: TermsInForce): Promise<void> {
  const { terms, title, howFar, revision, claim, report, engineVersion, overrideReason } = next;
  await tx.publishedLine.deleteMany({ where: { puzzleId } });
  await tx.puzzle.update({
    where: { id: puzzleId },
    data: {
      ...columnsOf(terms),
      ...{ title, howFar, revision, claim, engineVersion, claimOverride: overrideReason },
      report: toJson(report),
      secondOpinion: Prisma.DbNull,
      publishedLines: { create: lineRows(terms.published) },
    },
  });
  await tx.$executeRaw`update puzzle set verified_at = clock_timestamp() where id = ${puzzleId}`;
}

/** Changes title, wording or times. */
export async function savePuzzleWords(
  tx: Tx,
  puzzleId: number,
  words: {
    readonly title?: string;
    readonly episodeId?: number;
    readonly howFar?: string | null;
    readonly opensAt?: Date | null;
    readonly closesAt?: Date | null;
    readonly zone?: string;
    readonly countsFirst?: boolean;
  },
): Promise<void> {
  await tx.puzzle.update({ where: { id: puzzleId }, data: words });
}
