// What does the engine say of solver moves in a mate task? Rule V1: holds, slower, slips or unclear,
// with evidence; rule O2: the replies worth answering; rule V0: each verdict has a table of its own,
// so that it does not depend on what was asked before or beside it.

import type { Uci } from '#lib/rules/move.ts';
import type { Engine } from './create-engine.ts';
import { buildProof } from './inner/build-proof.ts';
import { judgeReplies, longestLine } from './inner/judge-replies.ts';
import {
  askMate,
  deepenFirstMove,
  type FirstMove,
  firstMoveMates,
  type MateQuestion,
  type Patience,
  report,
} from './inner/mate-question.ts';
import { namedRefutation } from './inner/name-refutation.ts';
import type { Evidence, MoveVerdict } from './verdict.ts';

/**
 * Verdicts on `moves` (or all legal moves) of a position with `movesLeft` solver moves left, in the
 * order asked. `proofNodes` is the budget of each. Stopped in between, it returns the verdicts that are
 * finished. A move that is not legal is our own mistake. `stillWinning` is left null: it is a
 * question for the evaluator.
 */
export function judgeMateMoves(
  engine: Engine,
  {
    fen,
    moves,
    movesLeft,
    proofNodes,
    ...patience
  }: {
    readonly fen: string;
    readonly moves: readonly Uci[] | 'all';
    readonly movesLeft: number;
    readonly proofNodes: number;
  } & Patience,
): MoveVerdict[] {
  const legal = askMate(engine, fen, { proofNodes }).firstMoves.map(({ uci }) => uci);
  const asked = moves === 'all' ? legal : moves;
  const verdicts: MoveVerdict[] = [];
  for (const uci of asked) {
    const question = askMate(engine, fen, { proofNodes, ...patience });
    question.progress = { ...question.progress, done: verdicts.length, total: asked.length };
    const first = question.firstMoves.find((one) => one.uci === uci);
    if (!first) throw new Error(`${uci} is not legal in ${fen}`);
    const verdict = judgeFirstMove(question, first, movesLeft);
    if (question.wasStopped) break;
    verdicts.push(verdict);
    report(question, { done: verdicts.length });
  }
  return verdicts;
}

function judgeFirstMove(question: MateQuestion, first: FirstMove, movesLeft: number): MoveVerdict {
  report(question, { stage: 'keys' });
  const mates = deepenFirstMove(question, first, movesLeft);
  if (mates === null) return verdictOf(question, first, { verdict: 'unclear', evidence: { kind: 'budget' } });
  if (mates) return provedVerdict(question, first, 'holds');
  const reply = namedRefutation(question, first);
  report(question, { stage: 'slower' });
  // Out of budget for one move more is not unclear: the move does not hold, that much is certain.
  if (firstMoveMates(question, first, movesLeft + 1)) return provedVerdict(question, first, 'slower');
  const line = reply === null ? [] : [reply];
  const evidence: Evidence = { kind: 'refutation', reply, movesLeft: movesLeft - 1, line };
  return verdictOf(question, first, { verdict: 'slips', evidence });
}

function provedVerdict(question: MateQuestion, first: FirstMove, verdict: 'holds' | 'slower'): MoveVerdict {
  report(question, { stage: 'replies' });
  const replies = judgeReplies(question, first);
  const { mateIn } = first;
  if (replies === null || mateIn === null) {
    return verdictOf(question, first, { verdict: 'unclear', evidence: { kind: 'budget' } });
  }
  const proof = buildProof(question, first);
  const evidence: Evidence = proof
    ? { kind: 'proof', proof }
    : { kind: 'large-proof', mateIn, line: longestLine(question, first) };
  const longest = replies[0]?.mateIn;
  const adequate = replies.filter((reply) => reply.mateIn === longest).map(({ uci }) => uci);
  return { ...verdictOf(question, first, { verdict, evidence }), mateIn, replies, adequate };
}

function verdictOf(
  question: MateQuestion,
  { uci }: FirstMove,
  { verdict, evidence }: Pick<MoveVerdict, 'verdict' | 'evidence'>,
): MoveVerdict {
  return {
    move: uci,
    verdict,
    mateIn: null,
    value: null,
    depth: 0,
    nodes: question.nodes,
    evidence,
    replies: [],
    adequate: [],
    evident: null,
    stillWinning: null,
  };
}
