// `prove --fen FEN --moves N [--proof]`

import { DEFAULT_TERMS } from '#lib/book/terms.ts';
import type { MateReport } from '#lib/engine/prove-mate.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import { writeSan } from '#lib/rules/san.ts';
import { findUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { fenSentence } from '#lib/words/rules-sentences.ts';
import { required, type Values, wholeNumber } from './inner/arguments.ts';
import { openEngine } from './inner/open-engine.ts';
import { answer, complain } from './inner/output.ts';

export async function runProve(values: Values): Promise<number> {
  const position = parseFen(required(values, 'fen'));
  if (!position.ok) {
    complain(`prove: --fen: ${fenSentence(position.reason, 'en')}`);
    return 2;
  }
  const moves = wholeNumber(values, 'moves', { least: 1, most: 60 });
  if (!moves.ok) {
    complain(`prove: ${moves.reason}`);
    return 2;
  }
  const question = {
    moves: moves.value,
    withProof: values.has('proof'),
    proofNodes: DEFAULT_TERMS.proofNodes,
  };
  const outcome = await prove(position.value, question);
  if (outcome.complaint !== null) complain(`prove: ${outcome.complaint}`);
  await answer(outcome.answer);
  return outcome.complaint === null ? 0 : 1;
}

/** The answer line; where a first move went out of its budget, also the complaint that says how far it came. */
export async function prove(
  position: Position,
  question: { readonly moves: number; readonly withProof: boolean; readonly proofNodes: number },
): Promise<{ readonly answer: object; readonly complaint: string | null }> {
  const engine = await openEngine();
  const { proveMate } = await import('#lib/engine/prove-mate.ts');
  const start = performance.now();
  const report = proveMate(engine, { fen: writeFen(position), withSlower: true, ...question });
  const { holds, mateIn, nodes } = report;
  const ms = Math.round(performance.now() - start);
  const { unfinished, ...settled } = listMoves(position, report);
  if (!report.isComplete) {
    const count = settled.keys.length + settled.slower.length + settled.refuted.length;
    const complaint = `out of budget (${question.proofNodes} nodes a first move): ${count} of ${count + unfinished.length} first moves settled`;
    return { answer: { outOfBudget: true, ...settled, unfinished, nodes, ms }, complaint };
  }
  const proof = question.withProof ? { proof: report.proof } : {};
  return { answer: { holds, mateIn, ...settled, nodes, ms, ...proof }, complaint: null };
}

function listMoves(position: Position, { keys, slower, refuted, unfinished }: MateReport) {
  const san = (uci: string): string => {
    const move = findUci(position, uci);
    if (move === null) throw new Error(`${uci} is not legal in ${writeFen(position)}`);
    return writeSan(position, move);
  };
  return {
    keys: keys.map(({ uci, mateIn }) => ({ uci, san: san(uci), mateIn })),
    slower: slower.map(({ uci, mateIn }) => ({ uci, san: san(uci), mateIn })),
    refuted: refuted.map(({ uci, by }) => ({ uci, san: san(uci), by })),
    unfinished: unfinished.map((uci) => ({ uci, san: san(uci) })),
  };
}
