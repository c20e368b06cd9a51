import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import type { Proof } from '#lib/checker/proof.ts';
import { sleep } from '#lib/machine/clock.ts';
import { parseEpd } from '#lib/rules/epd.ts';
import { bookPosition } from '#lib/rules/position-key.ts';
import { parseSan } from '#lib/rules/san.ts';
import { writeUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { loadProof } from '#lib/store/books.ts';
import { db } from '#lib/store/client.ts';
import { submitAnswer } from '#lib/usecases/answers/submit-answer.ts';
import { createPuzzle } from '#lib/usecases/puzzles/create-puzzle.ts';
import { publishPuzzle } from '#lib/usecases/puzzles/publish-puzzle.ts';
import { submission } from '../support/build-answer.ts';
import { buildShow } from '../support/build-show.ts';
import { givenDatabase } from '../support/database.ts';
import { startWorker } from '../support/worker-process.ts';

const LIMIT_MS = 240_000;

interface Problem {
  readonly name: string;
  readonly terms: PuzzleTerms;
  readonly position: string;
  readonly moves: number;
  readonly keys: readonly string[];
}

/** Every problem in two and in three of the file, with its composer and source as the name. */
function readProblems(): Problem[] {
  const lines = readFileSync(new URL('../cases/mates.epd', import.meta.url), 'utf8').split('\n');
  return lines.flatMap((line): Problem[] => {
    if (line.trim() === '' || line.startsWith('#')) return [];
    const read = parseEpd(line);
    if (!read.ok) throw new Error(`${line}: ${JSON.stringify(read.reason)}`);
    const { position, operations } = read.value;
    const moves = Number(operations.get('dm')?.[0]);
    if (moves !== 2 && moves !== 3) return [];
    const keys = (operations.get('bm') ?? []).map((text) => {
      const move = parseSan(position, text);
      if (!move.ok) throw new Error(`${line}: ${text}`);
      return writeUci(move.value);
    });
    const terms: PuzzleTerms = { ...DEFAULT_TERMS, fen: writeFen(position), task: { kind: 'mate', moves } };
    const name = `${operations.get('id')?.[0]}, ${operations.get('c0')?.[0]}`;
    return [{ name, terms, position: bookPosition(position), moves, keys: keys.sort() }];
  });
}

const database = givenDatabase();
const problems = readProblems();

/** Solver moves to mate from a node of the proof, against the defence that lasts longest in it. */
function lengthFrom(proof: Proof, index: number, known = new Map<number, number>()): number {
  const before = known.get(index);
  if (before !== undefined) return before;
  const nexts = Object.values(proof.nodes[index]?.replies ?? {});
  const length = 1 + Math.max(0, ...nexts.map((next) => lengthFrom(proof, next, known)));
  known.set(index, length);
  return length;
}

/** The prover's own line: the proof's moves against the defence that lasts longest, up to the mate. */
function lineOf(proof: Proof): string[] {
  const line: string[] = [];
  for (let index = 0; ; ) {
    const node = proof.nodes[index];
    if (node === undefined) return line;
    line.push(node.move);
    const replies = Object.entries(node.replies).sort(([a], [b]) => (a < b ? -1 : 1));
    const longest = Math.max(...replies.map(([, next]) => lengthFrom(proof, next)));
    const best = replies.find(([, next]) => lengthFrom(proof, next) === longest);
    if (best === undefined) return line;
    line.push(best[0]);
    index = best[1];
  }
}

test(
  `all ${problems.length} published problems in two and in three, each a puzzle through database, worker and marking`,
  async () => {
    expect(problems).toHaveLength(63);
    const start = performance.now();
    const { showId, episodeId, memberId } = await buildShow();
    const worker = startWorker(database);
    const hour = 3_600_000;
    const now = new Date();
    const puzzles: (Problem & { puzzleId: number; slug: string })[] = [];
    for (const problem of problems) {
      const opensAt = new Date(now.getTime() - hour);
      const closesAt = new Date(now.getTime() + hour);
      const made = await createPuzzle({
        showId,
        episodeId,
        title: problem.name,
        terms: problem.terms,
        opensAt,
        closesAt,
        zone: 'UTC',
        memberId,
      });
      if (!made.ok) throw new Error(`${problem.name}: ${JSON.stringify(made.reason)}`);
      puzzles.push({ ...problem, ...made.value });
    }
    const waitUntil = async (count: () => Promise<number>) => {
      while ((await count()) > 0 && performance.now() - start < LIMIT_MS) await sleep(100);
      expect(await count()).toBe(0);
    };
    await waitUntil(() => db().puzzle.count({ where: { verifiedAt: null } }));
    const verifiedMs = performance.now() - start;

    for (const puzzle of puzzles) {
      const { puzzleId, position, moves, keys, name } = puzzle;
      const first = await db().bookRow.findMany({
        where: { puzzleId, position, movesLeft: moves, verdict: 'holds' },
      });
      expect(first.map((row) => row.move).sort(), `keys of ${name}`).toEqual(keys);
      for (const row of first) expect(['passed', 'too-large'], `check of ${name}`).toContain(row.checkStatus);
      expect((await publishPuzzle({ puzzleId, memberId, overrideReason: null })).ok, name).toBe(true);
      for (const key of keys) {
        const proof = await loadProof(db(), puzzleId, { position, movesLeft: moves, move: key });
        const line = moves === 2 || proof === null ? [key] : lineOf(proof);
        expect((await submitAnswer(submission(puzzle.slug, line.join(' ')))).ok, name).toBe(true);
      }
    }
    await waitUntil(() => db().answer.count({ where: { work: { not: 'done' } } }));
    await worker.stop();
    const marks = await db().mark.findMany({
      where: { isCurrent: true },
      include: { puzzle: true, answer: true },
    });
    const failed = marks
      .filter((mark) => mark.outcome !== 'solved' || mark.points !== 5)
      .map((mark) => `${mark.puzzle.title}: ${mark.answer.text} is ${mark.outcome}`);
    expect(failed).toEqual([]);
    const seconds = (performance.now() - start) / 1000;
    expect(seconds, `verified after ${(verifiedMs / 1000).toFixed(0)} s`).toBeLessThan(LIMIT_MS / 1000);
  },
  LIMIT_MS + 20_000,
);
