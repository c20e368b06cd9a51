// The one door for the book: verdicts on solver moves in mate, win and draw tasks (rules V0 to V5),
// with the replies worth answering (rule O2) and whether the win is evident after them (rule O1).

import { legalMoves } from '#lib/rules/legal-moves.ts';
import type { Move, Uci } from '#lib/rules/move.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import { writeUci } from '#lib/rules/uci.ts';
import type { Engine } from './create-engine.ts';
import type { ValueClaim } from './inner/bounds.ts';
import type { Tables } from './inner/exact-result.ts';
import { withStillWinning } from './inner/still-winning.ts';
import { judgeByValue, type ValueQuestion } from './inner/value-verdict.ts';
import { judgeMateMoves } from './judge-mate-moves.ts';
import { searchPosition } from './search-position.ts';
import { createTableSet, type TableSet } from './table-set.ts';
import type { Budgets, Claim, EngineProgress, MoveVerdict } from './verdict.ts';

/** What to judge. */
export interface JudgeOrder {
  /** The full position, the solver to move. */
  readonly fen: string;
  readonly moves: readonly Uci[] | 'all';
  readonly claim: Claim;
  readonly budgets: Budgets;
  /** Where endgame tables come from and are kept; without it they are built and kept in memory. */
  readonly tables?: TableSet | undefined;
  /**
   * Win and draw: was the position reached by holding moves only (none, for the puzzle's own)? Then
   * rule V2's second look at its best move applies, so far as no move asked for holds. Default true.
   */
  readonly isAfterHolding?: boolean | undefined;
  /** Win and draw: the puzzle's own position, of which the host claims that something holds. */
  readonly isStart?: boolean | undefined;
  readonly shouldStop?: (() => boolean) | undefined;
  readonly onProgress?: ((progress: EngineProgress) => void) | undefined;
}

/** A move within so many centipawns of the best is unclear where even the best misses the bound (rule V2). */
const NEAR_BEST = 50;
/** The same in the puzzle's own position. */
const NEAR_BEST_AT_START = 300;

/** Tables of engines whose caller brought none. */
const ownTables = new WeakMap<Engine, TableSet>();

function tablesOf(engine: Engine, order: JudgeOrder): Tables {
  const set = order.tables ?? ownTables.get(engine) ?? createTableSet();
  if (order.tables === undefined) ownTables.set(engine, set);
  return { set, work: { shouldStop: order.shouldStop, onProgress: order.onProgress } };
}

/** The position to verify: a half-move clock below 80 is no part of it (rule V5). */
function positionToJudge(fen: string): Position {
  const parsed = parseFen(fen);
  if (!parsed.ok) throw new Error(`Not a position: ${fen} (${JSON.stringify(parsed.reason)})`);
  const position = parsed.value;
  return position.halfmoveClock >= 80 ? position : { ...position, halfmoveClock: 0 };
}

function askedMoves(position: Position, moves: readonly Uci[] | 'all'): Move[] {
  const legal = legalMoves(position).sort((a, b) => (writeUci(a) < writeUci(b) ? -1 : 1));
  if (moves === 'all') return legal;
  return moves.map((uci) => {
    const move = legal.find((one) => writeUci(one) === uci);
    if (move === undefined) throw new Error(`${uci} is not legal`);
    return move;
  });
}

function judgeAll(question: ValueQuestion, moves: readonly Move[], order: JudgeOrder): MoveVerdict[] {
  const verdicts: MoveVerdict[] = [];
  let nodes = 0;
  for (const move of moves) {
    const verdict = judgeByValue(question, move, question.budgetNodes);
    if (verdict === null) break;
    verdicts.push(verdict);
    nodes += verdict.nodes;
    order.onProgress?.({ stage: 'search', done: verdicts.length, total: moves.length, nodes });
  }
  return verdicts;
}

/** The value by which the best move of the position is known: exact results stand at the ends. */
function worthOf({ verdict, value, mateIn }: MoveVerdict): number {
  if (verdict === 'holds' && (mateIn !== null || value === null)) return 10_000;
  return value ?? -10_000;
}

/**
 * The move of the position that one search likes best. Not the best of the moves asked for: the same verdict has to
 * come out whether they are asked one by one, in parts or all at once (rule V0).
 */
function bestMove({ engine, position, budgetNodes, tables }: ValueQuestion): Uci | null {
  const { shouldStop } = tables.work;
  const { depths, wasStopped } = searchPosition(engine, { position, budgetNodes, shouldStop });
  return wasStopped ? null : (depths.at(-1)?.line[0] ?? null);
}

/**
 * Rule V2: along a line of holding moves, where no move reaches the bound, the best is searched again
 * with double budget; if still below, moves within 50 of it are unclear, never slips. In the puzzle's
 * own position, of which the host says that something holds, the engine then contradicts the host, and
 * every searched move within 300 is unclear. Null where stopped.
 */
function secondLook(
  question: ValueQuestion,
  verdicts: readonly MoveVerdict[],
  order: JudgeOrder,
): MoveVerdict[] | null {
  const best = bestMove(question);
  if (best === null) return question.tables.work.shouldStop?.() === true ? null : [...verdicts];
  const [move] = askedMoves(question.position, [best]);
  const again = move === undefined ? null : judgeByValue(question, move, 2 * question.budgetNodes);
  if (again === null) return null;
  if (again.verdict === 'holds') return verdicts.map((one) => (one.move === again.move ? again : one));
  const bar = worthOf(again) - (order.isStart === true ? NEAR_BEST_AT_START : NEAR_BEST);
  return verdicts.map((verdict) => {
    const isOpen = verdict.verdict === 'slips' && verdict.depth > 0 && worthOf(verdict) >= bar;
    return isOpen ? { ...verdict, verdict: 'unclear' } : verdict;
  });
}

function judgeValueMoves(engine: Engine, order: JudgeOrder, claim: ValueClaim): MoveVerdict[] {
  const question: ValueQuestion = {
    engine,
    position: positionToJudge(order.fen),
    claim,
    budgetNodes: order.budgets.budgetNodes,
    proofNodes: order.budgets.proofNodes,
    tables: tablesOf(engine, order),
  };
  const moves = askedMoves(question.position, order.moves);
  const verdicts = judgeAll(question, moves, order);
  const isWhole = verdicts.length === moves.length;
  if (order.isAfterHolding === false || !isWhole || verdicts.some(({ verdict }) => verdict === 'holds')) {
    return verdicts;
  }
  // What rules or tables settle is exact (rules V3, V4): nothing in it to look at again.
  if (verdicts.every(({ verdict, depth }) => verdict === 'slips' && depth === 0)) return verdicts;
  return secondLook(question, verdicts, order) ?? [];
}

/**
 * The verdicts on `moves` in the order asked ('all': in UCI order). Exact for mate tasks and endings
 * with a table; else by search within the budgets, the same on every machine (rule V0). Costs up to
 * four times `budgetNodes` a move, and about half as much again for the replies to a move that holds.
 * Stopped in between, it returns the verdicts that are finished. Throws on a move that is not legal.
 */
export function judgeMoves(engine: Engine, order: JudgeOrder): MoveVerdict[] {
  const { claim, shouldStop, onProgress } = order;
  if (claim.task !== 'mate') return judgeValueMoves(engine, order, claim);
  const { fen, moves, budgets } = order;
  const verdicts = judgeMateMoves(engine, {
    fen,
    moves,
    movesLeft: claim.movesLeft,
    proofNodes: budgets.proofNodes,
    shouldStop,
    onProgress,
  });
  return withStillWinning(engine, positionToJudge(fen), { verdicts, tables: tablesOf(engine, order) });
}
