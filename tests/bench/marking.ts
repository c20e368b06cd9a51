// How is marked, and how fast? All judged cases as one table, the fifth set aside apart; answers per second with
// every position known (floor 2,000, aim 10,000 on one core, reading included); and of every published mate each
// first move that is no key: wrong or slower, its refutation or proof checked. `-- up to N` as the first argument
// bounds the length of the mates (default 4).

import { createEngine } from '#lib/engine/create-engine.ts';
import { readText } from '#lib/reading/read-text.ts';
import type { JudgedCase, JudgedPuzzle } from '../cases/judged/judged-case.ts';
import { isSetAside, JUDGED_PUZZLES } from '../cases/judged/judged-puzzles.ts';
import { type JudgedBook, markOnDemand, openBook } from '../support/judge-answers.ts';
import { markFirstMoves, standingOf } from '../support/mark-first-moves.ts';
import { mateCases } from '../support/mate-cases.ts';
import { positionOf } from '../support/positions.ts';
import { cpuMs, finish, say } from './inner/measure.ts';

const engine = createEngine();
const floors: boolean[] = [];
const longest = Number(process.argv[2] ?? 4);

interface Judged {
  readonly puzzle: JudgedPuzzle;
  readonly judged: JudgedCase;
  readonly book: JudgedBook;
  readonly isRight: boolean;
}

function told({
  outcome,
  atMove,
  flags,
  p,
  r,
  points,
}: {
  readonly outcome: string;
  readonly atMove: number | null;
  readonly flags: readonly string[];
  readonly p: number;
  readonly r: number;
  readonly points: number;
}): string {
  const place = atMove === null ? '' : ` at ${atMove}`;
  const beside = flags.length === 0 ? '' : ` [${[...flags].sort().join(', ')}]`;
  return `${outcome}${place} ${p}/${r} ${points} points${beside}`;
}

function judgeAll(): Judged[] {
  return JUDGED_PUZZLES.flatMap((puzzle) => {
    const book = openBook(engine, puzzle);
    return puzzle.cases.map((judged) => {
      const found = told(markOnDemand(engine, book, judged));
      const expected = told({ ...judged, atMove: judged.at ?? null, flags: judged.flags ?? [] });
      const isRight = found === expected;
      const note = isRight ? '' : `   EXPECTED ${expected}`;
      const aside = isSetAside(judged) ? ' (set aside)' : '';
      process.stdout.write(
        `${judged.id.padEnd(30)} ${JSON.stringify(judged.text).padEnd(58)} ${found}${aside}${note}\n`,
      );
      return { puzzle, judged, book, isRight };
    });
  });
}

function reportCases(all: readonly Judged[]): void {
  for (const [title, isAside] of [
    ['judged cases run by the tests', false],
    ['judged cases set aside', true],
  ] as const) {
    const some = all.filter(({ judged }) => isSetAside(judged) === isAside);
    const right = some.filter(({ isRight }) => isRight).length;
    say(`${title}: ${some.length}`, `${right} as expected`);
  }
}

function measureSpeed(all: readonly Judged[]): void {
  const rounds = 100;
  const answers = all.length * rounds;
  const reads = all.map(({ judged, book }) =>
    readText({ position: positionOf(book.terms.fen), text: judged.text }),
  );
  const whole = cpuMs(() => {
    for (let round = 0; round < rounds; round += 1) {
      for (const { judged, book } of all) book.marker({ text: judged.text, meant: judged.meant ?? null });
    }
  });
  const alone = cpuMs(() => {
    for (let round = 0; round < rounds; round += 1) {
      for (const [at, { judged, book }] of all.entries()) {
        const read = reads[at];
        if (read !== undefined) book.marker({ text: judged.text, meant: judged.meant ?? null, read });
      }
    }
  });
  const perSecond = Math.round((1000 * answers) / whole);
  floors.push(
    say(`answers a second, read and marked, positions known (${answers})`, String(perSecond), {
      floor: '2000',
      aim: '10000',
      isMet: perSecond >= 2000,
    }),
  );
  say('the same, read already', String(Math.round((1000 * answers) / alone)));
}

function markPublished(): void {
  const cases = mateCases().filter(({ id, moves }) => !id.startsWith('long') && moves <= longest);
  const counts = { key: 0, slower: 0, wrong: 0, fault: 0 };
  let unchecked = 0;
  const ms = cpuMs(() => {
    for (const { id, fen, moves, keys } of cases) {
      for (const one of markFirstMoves(engine, fen, moves)) {
        const standing = standingOf(one, keys);
        counts[standing] += 1;
        if (one.row.check !== 'passed') unchecked += 1;
        if (standing === 'fault')
          process.stdout.write(`  ${id}: ${one.row.move} ${one.mark.outcome} ${one.row.check}\n`);
      }
    }
  });
  const all = counts.key + counts.slower + counts.wrong + counts.fault;
  say(
    `published mates up to ${longest}: ${cases.length}`,
    `${all} first moves in ${(ms / 1000).toFixed(0)} s`,
  );
  say('  keys, slower, wrong', `${counts.key}, ${counts.slower}, ${counts.wrong}`);
  say('  too large to be replayed', `${unchecked} (${((100 * unchecked) / all).toFixed(2)} %)`);
  floors.push(
    say('  neither, or without its proof or refutation', String(counts.fault), {
      floor: '0',
      aim: '0',
      isMet: counts.fault === 0,
    }),
  );
}

const all = judgeAll();
reportCases(all);
measureSpeed(all);
markPublished();
finish(floors);
