// Reads at least 1,000,000 texts from a seed: random ones, real ones with slips, hostile ones. No throw, no
// text over the bound of 20 ms of CPU, every move legal; a sample is replayed by another rules library.
// `npm run fuzz` or `npm run fuzz -- COUNT SEED`.

import { createRandom } from '#lib/kit/random.ts';
import { readText } from '#lib/reading/read-text.ts';
import type { Position } from '#lib/rules/position.ts';
import { faultsOf } from '../support/fuzz-reading.ts';
import {
  hostileText,
  mutatedText,
  randomText,
  shuffledText,
  vocabularyOf,
} from '../support/hostile-texts.ts';
import { otherBoard } from '../support/other-rules.ts';
import { positionOf } from '../support/positions.ts';
import { readingCases, readingPositions } from '../support/reading-cases.ts';

const count = Number(process.argv[2] ?? 1_000_000);
const seed = Number(process.argv[3] ?? 4);
/** Of a thousand texts so many are hostile (long), and so many are real words in any order; the rest half mutated, half random. */
const HOSTILE_PER_MILLE = 10;
const SHUFFLED_PER_MILLE = 290;
const BOUND_MS = 20;

const random = createRandom(seed);
const cases = readingCases();
const vocabulary = vocabularyOf(cases.map(({ text }) => text));
const boards = [...readingPositions().values()].map((fen): { fen: string; position: Position } => ({
  fen,
  position: positionOf(fen),
}));
const byFen = new Map(boards.map(({ fen, position }) => [fen, position]));

/** The line of the first reading, replayed by chess.js up to its first gap. */
function replayFault(fen: string, position: Position, text: string): string | null {
  const line = readText({ position, text }).readings[0]?.line ?? [];
  const board = otherBoard(fen);
  for (const [index, { uci, by }] of line.entries()) {
    if ((index % 2 === 0 ? 'solver' : 'defender') !== by) return null;
    try {
      board.move({ from: uci.slice(0, 2), to: uci.slice(2, 4), promotion: uci.charAt(4) });
    } catch {
      return `chess.js refuses ${uci}: ${JSON.stringify(text.slice(0, 200))}`;
    }
  }
  return null;
}

let slowest = 0;
let slowestText = '';
let over = 0;
let answers = 0;
const faults: string[] = [];
process.stdout.write(`fuzz: ${count} texts from seed ${seed}\n`);
for (let done = 1; done <= count; done += 1) {
  const board = random.pick(boards);
  const kind = random.int(1000);
  let text: string;
  let { fen, position } = board;
  if (kind < HOSTILE_PER_MILLE) text = hostileText(random);
  else if (kind < HOSTILE_PER_MILLE + SHUFFLED_PER_MILLE) text = shuffledText(random, vocabulary);
  else if (kind < 650) {
    const real = random.pick(cases);
    fen = real.fen;
    position = byFen.get(fen) ?? position;
    text = mutatedText(random, real.text);
  } else text = randomText(random);
  const before = process.threadCpuUsage();
  try {
    if (readText({ position, text }).kind === 'answer') answers += 1;
  } catch {
    // faultsOf reads the text again and reports what was thrown.
  }
  const { user, system } = process.threadCpuUsage(before);
  const spent = (user + system) / 1000;
  // The first texts also pay for the compiler.
  if (done > 2000 && spent > slowest) {
    slowest = spent;
    slowestText = text.slice(0, 60);
  }
  if (done > 2000 && spent > BOUND_MS) over += 1;
  faults.push(...faultsOf(position, text));
  if (done % 50 === 0) {
    const fault = replayFault(fen, position, text);
    if (fault !== null) faults.push(fault);
  }
  if (faults.length > 20) break;
  if (done % 100_000 === 0) {
    process.stdout.write(`  ${done}: ${faults.length} faults, slowest ${slowest.toFixed(1)} ms of CPU\n`);
  }
}
for (const fault of faults) process.stdout.write(`  ${fault}\n`);
process.stdout.write(
  `${faults.length} faults, ${over} texts over ${BOUND_MS} ms, slowest ${slowest.toFixed(1)} ms of CPU (${JSON.stringify(slowestText)}), ${answers} of ${count} texts had a reading\n`,
);
process.exit(faults.length === 0 && over === 0 ? 0 : 1);
