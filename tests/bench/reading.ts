// How well and how fast are texts read? Shares by family, set-aside cases apart; speed beside chess.js on
// the same clean SAN in the same run (floor 3x, aim 10x); the slowest of 100,000 hostile texts (20 ms, R7).

import { Chess } from 'chess.js';
import { createRandom } from '#lib/kit/random.ts';
import { readText } from '#lib/reading/read-text.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import { hostileText } from '../support/hostile-texts.ts';
import { differencesOf } from '../support/judge-reading.ts';
import {
  type ReadingCase,
  readingCases,
  readingExamples,
  readingPositions,
} from '../support/reading-cases.ts';

const SEED = 20261125;
const HOSTILE = 100_000;
/** Rule R7. */
const BOUND_MS = 20;

function positionOf(fen: string): Position {
  const parsed = parseFen(fen);
  if (!parsed.ok) throw new Error(`Not a position: ${fen}`);
  return parsed.value;
}

function share(title: string, cases: readonly ReadingCase[], isByFamily: boolean): void {
  const families = new Map<string, [right: number, all: number]>();
  let right = 0;
  for (const one of cases) {
    const isRight = differencesOf(one).length === 0;
    const tally = families.get(one.family) ?? [0, 0];
    families.set(one.family, [tally[0] + (isRight ? 1 : 0), tally[1] + 1]);
    if (isRight) right += 1;
  }
  const percent = ((100 * right) / Math.max(1, cases.length)).toFixed(1);
  console.log(`${title}: ${right} of ${cases.length} read exactly right (${percent} %)`);
  if (isByFamily) {
    console.log(`  ${[...families].map(([family, [good, all]]) => `${family} ${good}/${all}`).join(', ')}`);
  }
}

/** Random games in clean SAN, as a viewer's line would be: 4 to 20 plies. */
function cleanTexts(count: number): { readonly fen: string; readonly text: string }[] {
  const random = createRandom(SEED);
  const fens = [...readingPositions().values()];
  const texts: { fen: string; text: string }[] = [];
  while (texts.length < count) {
    const fen = random.pick(fens);
    const board = new Chess(fen);
    const moves: string[] = [];
    const plies = 4 + random.int(17);
    while (moves.length < plies && !board.isGameOver()) {
      const san = random.pick(board.moves());
      moves.push(san);
      board.move(san);
    }
    if (moves.length > 0) texts.push({ fen, text: moves.join(' ') });
  }
  return texts;
}

function timed(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

function speed(): void {
  const texts = cleanTexts(2000);
  const positions = texts.map(({ fen }) => positionOf(fen));
  const ours = (): void => {
    texts.forEach(({ text }, index) => {
      const position = positions[index];
      if (position === undefined || readText({ position, text }).readings.length !== 1) throw new Error(text);
    });
  };
  const theirs = (): void => {
    for (const { fen, text } of texts) {
      const board = new Chess(fen);
      for (const san of text.split(' ')) board.move(san);
    }
  };
  ours();
  theirs();
  const ratios: number[] = [];
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 5; round += 1) {
    const mine = timed(ours);
    const other = timed(theirs);
    best = Math.min(best, mine);
    ratios.push(other / mine);
  }
  ratios.sort((one, two) => one - two);
  const perSecond = Math.round((1000 * texts.length) / best);
  console.log(
    `clean SAN: ${perSecond} texts a second, ${ratios[2]?.toFixed(1)} times chess.js (median of 5)`,
  );
}

function hostile(): void {
  const random = createRandom(SEED);
  const position = positionOf('r1bqk1nr/pppp1ppp/2n5/2b1p3/2B1P3/5N2/PPPP1PPP/RNBQK2R w KQkq - 4 4');
  const warm = createRandom(SEED + 1);
  for (let count = 0; count < 2000; count += 1) readText({ position, text: hostileText(warm) });
  // Only numbers are kept: a hundred thousand long texts would make the garbage collector part of the figure.
  const times = new Float64Array(HOSTILE);
  const over: string[] = [];
  let slowest = { ms: 0, text: '' };
  for (let count = 0; count < HOSTILE; count += 1) {
    const text = hostileText(random);
    const ms = cpuOf(position, text);
    times[count] = ms;
    if (ms > slowest.ms) slowest = { ms, text };
    if (ms > BOUND_MS) over.push(text);
  }
  times.sort();
  const p99 = times[Math.floor(HOSTILE * 0.99)] ?? 0;
  console.log(
    `hostile: slowest of ${HOSTILE} ${slowest.ms.toFixed(1)} ms of CPU (${JSON.stringify(slowest.text.slice(0, 40))}), p99 ${p99.toFixed(1)} ms, ${over.length} over ${BOUND_MS} ms`,
  );
  for (const text of over) {
    const again = [1, 2, 3].map(() => cpuOf(position, text).toFixed(1));
    console.log(
      `  over the bound, read again: ${again.join(', ')} ms (${JSON.stringify(text.slice(0, 40))})`,
    );
  }
}

/** Letters that may be a king beside castling rights, against the same text without them: once 7.6 times as slow. */
function castlingRights(): void {
  const text = 'wrong: Re8 right: Re7 '.repeat(190);
  const least = (rights: string): number => {
    const position = positionOf(`r3k2r/ppp2ppp/8/8/8/8/PPP2PPP/R3K2R w ${rights} - 0 1`);
    return Math.min(...Array.from({ length: 12 }, () => cpuOf(position, text)));
  };
  least('-');
  console.log(`castling rights: ${(least('KQkq') / least('-')).toFixed(2)} times the cost of none`);
}

function cpuOf(position: Position, text: string): number {
  const start = process.threadCpuUsage();
  readText({ position, text });
  const { user, system } = process.threadCpuUsage(start);
  return (user + system) / 1000;
}

const all = readingCases();
share('the forty examples', readingExamples(), false);
share(
  'own cases',
  all.filter(({ isSetAside }) => !isSetAside),
  true,
);
share(
  'set-aside cases',
  all.filter(({ isSetAside }) => isSetAside),
  true,
);
speed();
hostile();
castlingRights();
