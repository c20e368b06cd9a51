import { createRandom } from '#lib/kit/random.ts';
import { readText } from '#lib/reading/read-text.ts';
import { hostileText, mutatedText, randomText } from './support/hostile-texts.ts';
import { positionOf } from './support/positions.ts';
import { readingCases, readingPositions } from './support/reading-cases.ts';
const count = Number(process.argv[2]); const seed = Number(process.argv[3]);
const random = createRandom(seed); const cases = readingCases();
const boards = [...readingPositions().values()].map((fen) => ({ fen, position: positionOf(fen) }));
const byFen = new Map(boards.map(({ fen, position }) => [fen, position]));
const slow: [number, number, string, string][] = [];
const timed = (position: any, text: string) => { const b = process.threadCpuUsage(); readText({ position, text }); const { user, system } = process.threadCpuUsage(b); return (user + system) / 1000; };
for (let done = 1; done <= count; done++) {
  const board = random.pick(boards); const kind = random.int(1000); let text: string; let { fen, position } = board;
  if (kind < 10) text = hostileText(random);
  else if (kind < 505) { const real = random.pick(cases); fen = real.fen; position = byFen.get(fen) ?? position; text = mutatedText(random, real.text); }
  else text = randomText(random);
  const spent = timed(position, text);
  if (done > 2000 && spent > 10) { let m = 1e9; for (let i = 0; i < 7; i++) m = Math.min(m, timed(position, text)); slow.push([spent, m, fen, text.slice(0, 300)]); }
}
slow.sort((a, b) => b[1] - a[1]);
console.log(slow.length, 'over 10 ms once'); for (const s of slow.slice(0, 6)) console.log(s[0].toFixed(1), 'min', s[1].toFixed(1), s[2], JSON.stringify(s[3]).slice(0, 200));
