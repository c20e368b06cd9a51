// The tactical suite at the default bounds, 5 million nodes a verdict: winning moves judged to hold,
// none of them judged to slip, and moves that lose a piece outright not judged to hold. A move that leaves
// a piece to be taken and is proved to mate all the same loses nothing; it is counted apart.
// `node tests/bench/wins.ts 10` takes every tenth position.

import { createEngine, loadFen } from '#lib/engine/create-engine.ts';
import { judgeMoves } from '#lib/engine/judge-moves.ts';
import { listLegal } from '#lib/engine/kernel-moves.ts';
import { proveMate } from '#lib/engine/prove-mate.ts';
import type { MoveVerdict } from '#lib/engine/verdict.ts';
import type { Uci } from '#lib/rules/move.ts';
import { losesPieceOutright } from '../support/outright-losses.ts';
import { type WinCase, winCases } from '../support/win-cases.ts';
import { cpuMs, finish, say } from './inner/measure.ts';

const step = Number(process.argv[2] ?? 1);
const engine = createEngine();
const cases = winCases().filter((_, n) => n % step === 0);
const budgets = { proofNodes: 20_000_000, budgetNodes: 5_000_000 };

function judge({ fen }: WinCase, moves: readonly Uci[]): MoveVerdict[] {
  const claim = { task: 'win', holdBound: 300, slipBound: 150 } as const;
  return judgeMoves(engine, { fen, moves, claim, budgets, isStart: true });
}

function tell(one: WinCase, { move, verdict, value, depth, nodes }: MoveVerdict): void {
  process.stdout.write(
    `  ${one.id}: ${move} ${verdict}, ${value ?? 'exact'}, depth ${depth}, ${(nodes / 1e6).toFixed(1)} M nodes\n`,
  );
}

let held = 0;
let slipped = 0;
let decided = 0;
let others = 0;
const ms = cpuMs(() => {
  for (const one of cases) {
    const [verdict] = judge(one, one.moves.slice(0, 1));
    if (verdict === undefined) throw new Error(one.id);
    if (one.isDecided) decided += 1;
    else others += 1;
    if (one.isDecided && verdict.verdict === 'holds') held += 1;
    else if (one.isDecided || verdict.verdict === 'slips') tell(one, verdict);
    if (!one.isDecided && verdict.verdict === 'slips') slipped += 1;
  }
});

/** Moves to mate where the prover shows that a move mates all the same, whatever it leaves to be taken; else null. */
function provedMateIn(fen: string, move: Uci): number | null {
  const { keys } = proveMate(engine, {
    fen,
    moves: 6,
    proofNodes: budgets.proofNodes,
    withSlower: false,
    withProof: false,
  });
  return keys.find(({ uci }) => uci === move)?.mateIn ?? null;
}

let asked = 0;
let believed = 0;
let mating = 0;
for (const one of cases.slice(0, Math.ceil(50 / step))) {
  loadFen(engine, one.fen);
  const losing = listLegal(engine)
    .map(({ uci }) => uci)
    .filter((uci) => !one.moves.includes(uci) && losesPieceOutright(one.fen, uci));
  asked += losing.length;
  for (const verdict of judge(one, losing)) {
    if (verdict.verdict !== 'holds') continue;
    tell(one, verdict);
    const mateIn = provedMateIn(one.fen, verdict.move);
    if (mateIn === null) believed += 1;
    else mating += 1;
    process.stdout.write(mateIn === null ? '' : `    and rightly: it is proved to mate in ${mateIn}\n`);
  }
}

const share = (100 * held) / decided;
finish([
  say(`decided wins: ${decided}`, `${held} hold, ${share.toFixed(1)} %`, {
    floor: '85 %',
    aim: '95 %',
    isMet: share >= 85,
  }),
  say(`other wins: ${others}`, `${slipped} judged to slip`, { floor: '0', aim: '0', isMet: slipped === 0 }),
  say(
    `moves that leave a piece to be taken: ${asked}`,
    `${believed} judged to hold, ${mating} more that are proved to mate`,
    { floor: '0', aim: '0', isMet: believed === 0 },
  ),
]);
process.stdout.write(`${(ms / 1000 / cases.length).toFixed(1)} s of CPU a verdict\n`);
