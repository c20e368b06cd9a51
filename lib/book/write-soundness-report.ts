// Is the claim true, is the key the only one, is there something quicker, which tries are tempting? The soundness
// report as data. Rules V1 to V3, V7, A5; the words are in `explainSoundness`.

import { isCheck } from '#lib/rules/attacks.ts';
import type { Uci } from '#lib/rules/move.ts';
import { findUci } from '#lib/rules/uci.ts';
import type { BookRow } from './book-row.ts';
import { movesLeftAtStart } from './claim.ts';
import { isDecidedInDiagram } from './decided-in-diagram.ts';
import { createTree, movesTo, type PositionTree, type TreeNode } from './position-tree.ts';
import { readPublishedLines } from './published-lines.ts';
import type { SolutionBook } from './solution-book.ts';
import type { PuzzleTerms } from './terms.ts';

/** A first move with its standing. */
export interface ReportedMove {
  readonly move: Uci;
  readonly mateIn: number | null;
  /** Centipawns from the solver's side; null in mate tasks and where exact. */
  readonly value: number | null;
  /** Decided by mate or table: there is no value to compare. */
  readonly isExact: boolean;
}

/** A first move that fails, and how. */
export interface TemptingTry {
  readonly move: Uci;
  /** The refuting reply first; empty where the move itself ends the game. */
  readonly line: readonly Uci[];
  readonly check: BookRow['check'];
}

/** A solver position of a published line at which more than one move holds. */
export interface Dual {
  readonly before: readonly Uci[];
  readonly published: Uci;
  readonly others: readonly Uci[];
}

/** How the first moves of a win or draw stand (rule V7). */
export interface Values {
  /** Every first move with a value, best first. */
  readonly row: readonly (ReportedMove & { readonly verdict: BookRow['verdict'] })[];
  readonly holdBound: number;
  readonly slipBound: number;
  readonly holding: number;
  readonly hasTooMany: boolean;
  /** A bound in the middle of the widest gap, at least 100; null where no gap is wider than the present one. */
  readonly proposedBound: number | null;
  /** Moves that hold and win evidently at once though the published one does not: simpler than the host's. */
  readonly simpler: readonly Uci[];
}

/** The report; everything in it is data that can be stored. */
export interface SoundnessReport {
  readonly v: 1;
  readonly claim: 'true' | 'false' | 'unclear';
  /** Moves that hold, the shortest mate or the soonest evident win first. */
  readonly keys: readonly ReportedMove[];
  readonly isUnique: boolean;
  /** A mate task whose shortest mate is shorter than asked: its length; else null. */
  readonly shorter: number | null;
  /** The true task to offer where the claim is false (rule A5): the shortest mate in one move more; else null. */
  readonly trueMate: number | null;
  readonly slower: readonly ReportedMove[];
  readonly unclear: readonly Uci[];
  readonly duals: readonly Dual[];
  readonly tries: readonly TemptingTry[];
  readonly values: Values | null;
  /** The diagram is decided already: a published line or a pinned number is needed (rule O1). */
  readonly isDecidedInDiagram: boolean;
  readonly needsEnd: boolean;
  readonly checks: {
    readonly passed: number;
    readonly failed: number;
    readonly tooLarge: number;
    readonly notCheckable: number;
  };
}

/** More first moves that hold than this, and the host is warned (rule V7). */
const MANY_HOLDING = 3;
const MOST_TRIES = 8;
const LEAST_BOUND = 100;

/** The report on a book that `buildBook` has filled. A book with holes gives a report of what it has. */
export function writeSoundnessReport(terms: PuzzleTerms, book: SolutionBook): SoundnessReport {
  const tree = createTree(terms.fen);
  const first = book.rowsAt(tree.root.bookPosition, movesLeftAtStart(terms));
  const holding = first.filter(({ verdict }) => verdict === 'holds').sort(soonestFirst);
  const slower = first.filter(({ verdict }) => verdict === 'slower');
  const unclear = first.filter(({ verdict }) => verdict === 'unclear').map(({ move }) => move);
  const shortest = Math.min(...holding.map(({ mateIn }) => mateIn ?? Number.POSITIVE_INFINITY));
  const isDecided = isDecidedInDiagram(terms, book, tree.root);
  return {
    v: 1,
    claim: holding.length > 0 ? 'true' : unclear.length > 0 ? 'unclear' : 'false',
    keys: holding.map(reported),
    isUnique: holding.length === 1 && unclear.length === 0,
    shorter: terms.task.kind === 'mate' && shortest < terms.task.moves ? shortest : null,
    trueMate:
      terms.task.kind === 'mate' && holding.length === 0 && slower.length > 0 ? terms.task.moves + 1 : null,
    slower: slower.map(reported),
    unclear,
    duals: findDuals(terms, book, tree),
    tries: findTries(first, tree),
    values: terms.task.kind === 'mate' ? null : compareValues(terms, first, readMainMove(terms, tree)),
    isDecidedInDiagram: isDecided,
    needsEnd: isDecided && terms.published.length === 0 && terms.solverMoves === null,
    checks: countChecks(book.rows()),
  };
}

function reported({ move, mateIn, value, evidence }: BookRow): ReportedMove {
  return { move, mateIn, value, isExact: mateIn !== null || evidence.kind === 'table' };
}

// The shortest mate, then evident wins, then the higher value.
function soonestFirst(a: BookRow, b: BookRow): number {
  return (
    (a.mateIn ?? 99) - (b.mateIn ?? 99) ||
    Number(b.evident === true) - Number(a.evident === true) ||
    (b.value ?? 0) - (a.value ?? 0) ||
    (a.move < b.move ? -1 : 1)
  );
}

function readMainMove(terms: PuzzleTerms, tree: PositionTree): Uci | null {
  return readPublishedLines(terms, tree).lines[0]?.moves[0] ?? null;
}

function findDuals(terms: PuzzleTerms, book: SolutionBook, tree: PositionTree): Dual[] {
  const duals = new Map<string, Dual>();
  for (const { moves } of readPublishedLines(terms, tree).lines) {
    let node: TreeNode | null = tree.root;
    for (const [ply, published] of moves.entries()) {
      if (node === null) break;
      if (ply % 2 === 0 && ply > 0) {
        const others = othersHolding(terms, book, node, published);
        if (others.length > 0) duals.set(node.key, { before: movesTo(node), published, others });
      }
      node = tree.play(node, published);
    }
  }
  return [...duals.values()];
}

// The mating move is no place for a dual: any mate will do.
function othersHolding(terms: PuzzleTerms, book: SolutionBook, node: TreeNode, published: Uci): Uci[] {
  const movesLeft = terms.task.kind === 'mate' ? terms.task.moves - (node.ply >> 1) : null;
  if (movesLeft === 1) return [];
  return book
    .rowsAt(node.bookPosition, movesLeft)
    .filter(({ verdict, move }) => verdict === 'holds' && move !== published)
    .map(({ move }) => move)
    .sort();
}

// Checks and captures tempt most, and moves that keep a won position; among equals the order of moves decides.
function findTries(first: readonly BookRow[], tree: PositionTree): TemptingTry[] {
  return first
    .filter(({ verdict }) => verdict === 'slips')
    .map((row) => ({ row, pull: pullOf(row, tree) }))
    .sort((a, b) => b.pull - a.pull || (a.row.move < b.row.move ? -1 : 1))
    .slice(0, MOST_TRIES)
    .map(({ row }) => ({ move: row.move, line: lineOf(row), check: row.check }));
}

function pullOf(row: BookRow, tree: PositionTree): number {
  const move = findUci(tree.root.position, row.move);
  const next = tree.play(tree.root, row.move);
  if (move === null || next === null) return 0;
  const isTaking = move.captured !== null;
  return (isCheck(next.position) ? 2 : 0) + (isTaking ? 1 : 0) + (row.stillWinning === true ? 1 : 0);
}

function lineOf({ evidence }: BookRow): readonly Uci[] {
  switch (evidence.kind) {
    case 'refutation':
      return evidence.line.length > 0 || evidence.reply === null ? evidence.line : [evidence.reply];
    case 'search':
    case 'table':
      return evidence.line;
    default:
      return [];
  }
}

function compareValues(terms: PuzzleTerms, first: readonly BookRow[], main: Uci | null): Values {
  const isWin = terms.task.kind === 'win';
  const row = [...first]
    .sort((a, b) => worth(b) - worth(a) || (a.move < b.move ? -1 : 1))
    .map((one) => ({ ...reported(one), verdict: one.verdict }));
  const holding = first.filter(({ verdict }) => verdict === 'holds');
  const mainRow = holding.find(({ move }) => move === main);
  const simpler = holding.filter(({ evident, move }) => evident === true && move !== main);
  return {
    row,
    holdBound: isWin ? terms.winBound : terms.drawBound,
    slipBound: isWin ? terms.slipBound : terms.drawSlipBound,
    holding: holding.length,
    hasTooMany: holding.length > MANY_HOLDING,
    proposedBound: isWin ? proposeBound(row, terms.winBound) : null,
    simpler:
      isWin && mainRow !== undefined && mainRow.evident !== true
        ? simpler.map(({ move }) => move).sort()
        : [],
  };
}

function worth({ verdict, mateIn, value }: BookRow): number {
  if (mateIn !== null) return 20_000 - mateIn;
  return value ?? (verdict === 'holds' ? 10_000 : -10_000);
}

// The widest gap between neighbours whose middle is at least 100; no proposal where the bound lies in it already.
function proposeBound(row: readonly ReportedMove[], bound: number): number | null {
  const values = row.map(({ value }) => value).filter((value) => value !== null);
  let best: { middle: number; low: number; high: number } | null = null;
  for (const [at, high] of values.entries()) {
    const low = values[at + 1];
    if (low === undefined) continue;
    const middle = Math.round((high + low) / 2);
    if (middle < LEAST_BOUND || (best !== null && high - low <= best.high - best.low)) continue;
    best = { middle, low, high };
  }
  return best === null || (bound > best.low && bound <= best.high) ? null : best.middle;
}

function countChecks(rows: readonly BookRow[]): SoundnessReport['checks'] {
  const count = (check: BookRow['check']) => rows.filter((row) => row.check === check).length;
  return {
    passed: count('passed'),
    failed: count('failed'),
    tooLarge: count('too-large'),
    notCheckable: count('not-checkable'),
  };
}
