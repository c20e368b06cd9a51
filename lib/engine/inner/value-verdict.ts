// One verdict in a win or draw task: exact where possible, else by search against the two bounds
// (rules V2 to V5).

import type { Move } from '#lib/rules/move.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Position } from '#lib/rules/position.ts';
import { writeUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import type { Engine } from '../create-engine.ts';
import { isEvident } from '../evident.ts';
import { judgeMateMoves } from '../judge-mate-moves.ts';
import { type DepthResult, mateMoves, searchPosition } from '../search-position.ts';
import type { Evidence, MoveVerdict, VerdictWord } from '../verdict.ts';
import { isSettled, solverValue, type ValueClaim, wordFor } from './bounds.ts';
import { type ExactResult, exactResult, type Tables, tableLine } from './exact-result.ts';
import { adequateReplies, valueReplies } from './reply-values.ts';

/** A position in which solver moves are judged by value. */
export interface ValueQuestion {
  readonly engine: Engine;
  readonly position: Position;
  readonly claim: ValueClaim;
  readonly budgetNodes: number;
  readonly proofNodes: number;
  readonly tables: Tables;
}

/** Rule V2: a verdict that is open after its budget gets one search with so many times of it. */
const ONCE_MORE = 4;
/** Shares of the budget for all replies together, and for one search of the evident question. */
const REPLIES_SHARE = 5;
const EVIDENT_SHARE = 50;
/** A longer mate is not worth the prover's time: the win holds without it. */
const LONGEST_PROOF = 8;
/** Share of the budget that proving a mate may cost. */
const PROOF_SHARE = 2;

/** What is known of a move before replies and evident are looked at. */
export interface Found {
  readonly word: VerdictWord;
  readonly mateIn: number | null;
  readonly value: number | null;
  readonly depth: number;
  readonly nodes: number;
  readonly evidence: Evidence;
  readonly exact: ExactResult | null;
}

function byExact(question: ValueQuestion, move: Move, after: Position, exact: ExactResult): Found {
  const isGood = exact.result === 'lost' || (exact.result === 'drawn' && question.claim.task === 'draw');
  const mateIn = exact.result === 'lost' ? (exact.distance ?? 0) + 1 : null;
  const common = {
    word: isGood ? 'holds' : 'slips',
    value: null,
    depth: 0,
    nodes: 0,
    mateIn,
    exact,
  } as const;
  if (exact.material !== null) {
    const line = tableLine(after, question.tables);
    return { ...common, evidence: { kind: 'table', material: exact.material, distance: mateIn, line } };
  }
  if (mateIn === 1) {
    const proof = {
      v: 1,
      fen: writeFen(question.position),
      n: 1,
      nodes: [{ move: writeUci(move), replies: {} }],
    } as const;
    return { ...common, evidence: { kind: 'proof', proof } };
  }
  return { ...common, value: 0, evidence: { kind: 'search', line: [] } };
}

/** A mate met by the search, proved before it is called one; null where the proof did not come. */
function prove(
  question: ValueQuestion,
  move: Move,
  last: DepthResult,
): Pick<Found, 'mateIn' | 'evidence'> | null {
  const lost = mateMoves(last.value);
  const movesLeft = lost === null || lost > 0 ? null : 1 - lost;
  if (movesLeft === null || movesLeft > LONGEST_PROOF) return null;
  const { engine, position, budgetNodes, proofNodes } = question;
  const [verdict] = judgeMateMoves(engine, {
    fen: writeFen(position),
    moves: [writeUci(move)],
    movesLeft,
    proofNodes: Math.min(proofNodes, Math.round(budgetNodes / PROOF_SHARE)),
    shouldStop: question.tables.work.shouldStop,
  });
  return verdict?.verdict === 'holds' ? { mateIn: verdict.mateIn, evidence: verdict.evidence } : null;
}

/** The verdict by search, or null where it was stopped. */
function bySearch(question: ValueQuestion, move: Move, after: Position, budgetNodes: number): Found | null {
  const { engine, claim, tables } = question;
  let extra = false;
  const result = searchPosition(engine, {
    position: after,
    budgetNodes,
    isEnough: (depths) => isSettled(depths, claim, budgetNodes),
    moreNodes: (depths) => {
      if (extra || wordFor(depths, claim) !== null) return 0;
      extra = true;
      return (ONCE_MORE - 1) * budgetNodes;
    },
    shouldStop: tables.work.shouldStop,
    onNodes: (nodes) => tables.work.onProgress?.({ stage: 'search', done: 0, total: 1, nodes }),
  });
  if (result.wasStopped) return null;
  const last = result.depths.at(-1);
  const word = wordFor(result.depths, claim) ?? 'unclear';
  const value = last === undefined ? null : solverValue(last.value);
  const found: Found = {
    word,
    mateIn: null,
    value,
    depth: last?.depth ?? 0,
    nodes: result.nodes,
    evidence: last === undefined ? { kind: 'budget' } : { kind: 'search', line: last.line },
    exact: null,
  };
  const proved = word === 'holds' && last !== undefined ? prove(question, move, last) : null;
  return proved === null ? found : { ...found, ...proved, value: null };
}

function withReplies(question: ValueQuestion, move: Move, after: Position, found: Found): MoveVerdict {
  const { engine, claim, tables } = question;
  const { word, mateIn, value, depth, evidence } = found;
  const bare = { move: writeUci(move), verdict: word, mateIn, value, depth, evidence, stillWinning: null };
  if (word !== 'holds') return { ...bare, nodes: found.nodes, replies: [], adequate: [], evident: null };
  // A share of the budget as it was set, also where the verdict itself took four times as much.
  const budgetNodes = question.budgetNodes / REPLIES_SHARE;
  const { replies, nodes } = valueReplies(engine, after, { tables, budgetNodes });
  const adequate = adequateReplies(engine, after, { solverMove: move, replies });
  const evident =
    claim.task === 'draw'
      ? found.exact?.result === 'drawn'
      : isEvident(engine, after, {
          replies: adequate,
          winBound: claim.holdBound,
          tables,
          budgetNodes: question.budgetNodes / EVIDENT_SHARE,
        });
  return {
    ...bare,
    nodes: found.nodes + nodes,
    replies: replies.map((reply) => ({ uci: reply.uci, mateIn: null, value: reply.value })),
    adequate: adequate.map(({ uci }) => uci),
    evident,
  };
}

/** What rules, tables or a search with a fresh table say of one move; null where it was stopped. */
export function lookAtMove(question: ValueQuestion, move: Move, budgetNodes: number): Found | null {
  const after = playMove(question.position, move);
  const exact = exactResult(after, question.tables);
  return exact === null
    ? bySearch(question, move, after, budgetNodes)
    : byExact(question, move, after, exact);
}

/** The verdict that follows, with the replies where the move holds; null where it was stopped. */
export function verdictFrom(question: ValueQuestion, move: Move, found: Found): MoveVerdict | null {
  const verdict = withReplies(question, move, playMove(question.position, move), found);
  return question.tables.work.shouldStop?.() === true ? null : verdict;
}
