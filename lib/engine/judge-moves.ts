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
import { lookAhead, settle } from './inner/second-look.ts';
import { withStillWinning } from './inner/still-winning.ts';
import { lookAtMove, type ValueQuestion, verdictFrom } from './inner/value-verdict.ts';
import { judgeMateMoves } from './judge-mate-moves.ts';
import { createTableSet, type TableSet } from './table-set.ts';
import { type Budgets, type Claim, type EngineProgress, isOpenVerdict, type MoveVerdict } from './verdict.ts';

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
   * rule V2's second look at its best move applies. Default true.
   */
  readonly isAfterHolding?: boolean | undefined;
  /** Win and draw: the puzzle's own position, of which the host claims that something holds. */
  readonly isStart?: boolean | undefined;
  /** Win and draw: verdicts of a first look (`isAfterHolding` false) at these moves, which is not taken again. */
  readonly firstLook?: readonly MoveVerdict[] | undefined;
  readonly shouldStop?: (() => boolean) | undefined;
  readonly onProgress?: ((progress: EngineProgress) => void) | undefined;
}

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

function firstLook(question: ValueQuestion, move: Move): MoveVerdict | null {
  const found = lookAtMove(question, move, question.budgetNodes);
  return found === null ? null : verdictFrom(question, move, found);
}

/** The verdicts of a first look, so far as nothing stopped it. */
function judgeAll(question: ValueQuestion, moves: readonly Move[], order: JudgeOrder): MoveVerdict[] {
  const verdicts: MoveVerdict[] = [];
  let nodes = 0;
  for (const move of moves) {
    const known = order.firstLook?.find((one) => one.move === writeUci(move));
    const verdict = known ?? firstLook(question, move);
    if (verdict === null) break;
    verdicts.push(verdict);
    nodes += verdict.nodes;
    order.onProgress?.({ stage: 'search', done: verdicts.length, total: moves.length, nodes });
  }
  return verdicts;
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
  if (order.isAfterHolding === false || !verdicts.some(isOpenVerdict)) return verdicts;
  if (verdicts.some(({ verdict }) => verdict === 'holds')) return verdicts;
  // Stopped before it is known whether another look is due: then no open verdict is finished.
  const finished = verdicts.filter((verdict) => !isOpenVerdict(verdict));
  if (verdicts.length < moves.length) return finished;
  const outlook = lookAhead(question, { isStart: order.isStart === true, known: verdicts });
  if (outlook === null) return finished;
  const settled = verdicts.map((verdict) => settle(question, verdict, outlook));
  return settled.filter((verdict) => verdict !== null);
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
