// How long does each reply to a mating move last? Rule O2: the longest-lasting ones are adequate.

import type { Uci } from '#lib/rules/move.ts';
import { listLegal, uciOf } from '../kernel-moves.ts';
import type { ReplyValue } from '../verdict.ts';
import { type FirstMove, type MateQuestion, runWithin } from './mate-question.ts';

/** Every legal reply with the exact length of the mate that follows, longest first, then in UCI order; null out of budget. */
export function judgeReplies(question: MateQuestion, first: FirstMove): ReplyValue[] | null {
  const { mateIn, move } = first;
  if (mateIn === null || mateIn === 1) return [];
  const { calls } = question.engine;
  const values: { uci: Uci; mateIn: number; value: null }[] = [];
  let budget = question.proofNodes;
  calls.make(move);
  for (const reply of listLegal(question.engine)) {
    calls.make(reply.move);
    const { value: length, nodes } = runWithin(question, budget, () => calls.shortestMate(mateIn - 1));
    calls.unmake(reply.move);
    budget -= nodes;
    if (length === 0) throw new Error(`No mate after ${first.uci} ${reply.uci} in ${question.fen}`);
    if (length === 255) break;
    values.push({ uci: reply.uci, mateIn: length, value: null });
  }
  const isWhole = values.length === listLegal(question.engine).length;
  calls.unmake(move);
  if (!isWhole) return null;
  return values.sort((a, b) => b.mateIn - a.mateIn || (a.uci < b.uci ? -1 : 1));
}

/** One way to play a mate out: the move, then always the first of the longest replies and the shortest mate. */
export function longestLine(question: MateQuestion, first: FirstMove): Uci[] {
  const { calls } = question.engine;
  const line: Uci[] = [first.uci];
  const played: number[] = [];
  let next: FirstMove | null = first;
  while (next !== null && next.mateIn !== null && next.mateIn > 1) {
    const reply: ReplyValue | undefined = judgeReplies(question, next)?.[0];
    if (reply === undefined) break;
    calls.make(next.move);
    const code = listLegal(question.engine).find(({ uci }) => uci === reply.uci)?.move ?? 0;
    calls.make(code);
    played.push(next.move, code);
    line.push(reply.uci);
    const length: number = runWithin(question, question.proofNodes, () =>
      calls.shortestMate(reply.mateIn ?? 0),
    ).value;
    const move = calls.mateMove();
    const uci = uciOf(move);
    next = length === 255 || uci === null ? null : { ...first, move, uci, mateIn: length };
    if (uci !== null) line.push(uci);
  }
  for (const move of played.reverse()) calls.unmake(move);
  return line;
}
