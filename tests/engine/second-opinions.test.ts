// Kernel, second prover and checker must say the same of every verdict (rules V1 and T1).

import { expect, test } from 'vitest';
import { checkProof } from '#lib/checker/check-proof.ts';
import { checkRefutation } from '#lib/checker/check-refutation.ts';
import { createEngine } from '#lib/engine/create-engine.ts';
import { judgeMateMoves } from '#lib/engine/judge-mate-moves.ts';
import type { MoveVerdict } from '#lib/engine/verdict.ts';
import { createRandom } from '#lib/kit/random.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Position } from '#lib/rules/position.ts';
import { findUci, writeUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { mateCases } from '../support/mate-cases.ts';
import { isMated } from '../support/small-prover.ts';
import { walksFrom } from '../support/walks.ts';

const engine = createEngine({ hashMiB: 16 });
const cases = mateCases().filter(({ moves }) => moves <= 4);

/** What the three disagree on, in words; null where they agree. */
function disagreement(position: Position, verdict: MoveVerdict, movesLeft: number): string | null {
  const fen = writeFen(position);
  const move = findUci(position, verdict.move);
  if (move === null) return 'not legal';
  const next = playMove(position, move);
  const lengths = [...Array(movesLeft + 1).keys()].map((length) => length + 1);
  const mateIn = lengths.find((length) => isMated(next, length - 1)) ?? null;
  const word = mateIn === null ? 'slips' : mateIn <= movesLeft ? 'holds' : 'slower';
  if (verdict.verdict !== word || verdict.mateIn !== mateIn)
    return `${verdict.verdict} ${verdict.mateIn}, not ${word} ${mateIn}`;
  const { evidence } = verdict;
  if (evidence.kind === 'proof') {
    const check = checkProof(evidence.proof);
    return check.status === 'passed' && evidence.proof.n === mateIn ? null : `proof ${JSON.stringify(check)}`;
  }
  if (evidence.kind !== 'refutation') return `no evidence: ${evidence.kind}`;
  const { reply } = evidence;
  const check = checkRefutation({ fen, move: verdict.move, reply, movesLeft: evidence.movesLeft });
  return check.status === 'failed' || evidence.movesLeft !== movesLeft - 1
    ? `refutation ${JSON.stringify(check)}`
    : null;
}

test.each([
  [1, 2000, 71],
  [2, 1500, 72],
  [3, 150, 73],
])(
  '[V1] [T1] %i moves left: %i verdicts beside published mates, kernel, second prover and checker agree (seed %i)',
  (movesLeft, count, seed) => {
    const random = createRandom(seed);
    const wrong: string[] = [];
    const words: Record<string, number> = {};
    let judged = 0;
    for (const position of walksFrom(cases, seed, 4)) {
      if (judged >= count) break;
      // Two first moves a position, so that many positions are seen.
      const moves = [random.pick(legalMoves(position)), random.pick(legalMoves(position))].map(writeUci);
      for (const verdict of judgeMateMoves(engine, {
        fen: writeFen(position),
        moves: [...new Set(moves)],
        movesLeft,
        proofNodes: 2_000_000,
      })) {
        judged += 1;
        words[verdict.verdict] = (words[verdict.verdict] ?? 0) + 1;
        const why = disagreement(position, verdict, movesLeft);
        if (why !== null) wrong.push(`${writeFen(position)} ${verdict.move} in ${movesLeft}: ${why}`);
      }
    }
    expect(wrong).toEqual([]);
    // The sample must hold something of everything, or it proves little.
    expect(Object.keys(words).sort()).toEqual(['holds', 'slips', 'slower']);
  },
);
