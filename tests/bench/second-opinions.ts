// How often do kernel, second prover and checker disagree, and how many proofs are too large to check?
// `node tests/bench/second-opinions.ts [COUNT]`: 10,000 verdicts, each in a position of its own beside published
// mates, a quarter of them with four moves left. Takes some minutes on one core.

import { checkProof } from '#lib/checker/check-proof.ts';
import { checkRefutation } from '#lib/checker/check-refutation.ts';
import { createEngine } from '#lib/engine/create-engine.ts';
import { judgeMateMoves } from '#lib/engine/judge-mate-moves.ts';
import type { MoveVerdict } from '#lib/engine/verdict.ts';
import { createRandom } from '#lib/kit/random.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Position } from '#lib/rules/position.ts';
import { positionEnd } from '#lib/rules/position-end.ts';
import { findUci, playUci, writeUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { mateCases } from '../support/mate-cases.ts';
import { canMate, isMated } from '../support/small-prover.ts';
import { walksFrom } from '../support/walks.ts';

const SEED = 81;
const count = Number(process.argv[2] ?? 10_000);
const engine = createEngine();
const random = createRandom(SEED);
const tally: Record<string, number> = {};
const faults: string[] = [];
const spent = { kernel: 0, second: 0, checker: 0 };
let deep = 0;
let judged = 0;

for (const position of walksFrom(
  mateCases().filter(({ moves }) => moves <= 4),
  SEED,
  4,
)) {
  if (judged >= count) break;
  const movesLeft = judged % 4 === 0 ? 4 : 1 + random.int(3);
  const move = writeUci(random.pick(legalMoves(position)));
  const fen = writeFen(position);
  const [verdict] = timed('kernel', () =>
    judgeMateMoves(engine, { fen, moves: [move], movesLeft, proofNodes: 20_000_000 }),
  );
  if (verdict === undefined) throw new Error(`No verdict on ${move} in ${fen}`);
  judged += 1;
  if ((verdict.mateIn ?? movesLeft) >= 4) deep += 1;
  if (!timed('second', () => isRight(position, verdict, movesLeft)))
    faults.push(`${fen} ${move} in ${movesLeft}: ${verdict.verdict}`);
  const status = timed('checker', () => statusOf(fen, verdict));
  if (status === 'failed') faults.push(`${fen} ${move} in ${movesLeft}: check failed`);
  const word = `${verdict.verdict}, ${status}`;
  tally[word] = (tally[word] ?? 0) + 1;
}
process.stdout.write(
  `${judged} verdicts (seed ${SEED}), ${deep} of four moves or deeper: ${faults.length} disagreements\n`,
);
process.stdout.write(`${JSON.stringify(tally)}\nseconds ${JSON.stringify(spent)}\n`);
for (const fault of faults) process.stdout.write(`${fault}\n`);
process.exitCode = faults.length === 0 ? 0 : 1;

function timed<T>(who: keyof typeof spent, work: () => T): T {
  const start = performance.now();
  const result = work();
  spent[who] += (performance.now() - start) / 1000;
  return result;
}

/** The second prover's word on the verdict: its exact length, or that no mate follows its refutation. */
function isRight(
  position: Position,
  { move, verdict, mateIn, evidence }: MoveVerdict,
  movesLeft: number,
): boolean {
  const played = findUci(position, move);
  if (played === null) return false;
  const next = playMove(position, played);
  if (mateIn !== null) {
    const word = mateIn <= movesLeft ? 'holds' : 'slower';
    return verdict === word && isMated(next, mateIn - 1) && (mateIn === 1 || !isMated(next, mateIn - 2));
  }
  if (evidence.kind !== 'refutation') return false;
  if (evidence.reply === null) return ['stalemate', 'insufficient'].includes(positionEnd(next) ?? '');
  const after = playUci(next, evidence.reply);
  return after !== null && !canMate(after, movesLeft - 1);
}

function statusOf(fen: string, { move, evidence }: MoveVerdict): string {
  if (evidence.kind === 'proof') return checkProof(evidence.proof).status;
  if (evidence.kind !== 'refutation') return evidence.kind;
  const { reply, movesLeft } = evidence;
  const { status, isExhaustive } = checkRefutation({ fen, move, reply, movesLeft });
  return isExhaustive || status !== 'passed' ? status : 'replayed';
}
