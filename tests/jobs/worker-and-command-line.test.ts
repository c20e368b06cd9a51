import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { createRandom } from '#lib/kit/random.ts';
import { sleep } from '#lib/machine/clock.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import { db } from '#lib/store/client.ts';
import { submitAnswer } from '#lib/usecases/answers/submit-answer.ts';
import { submission } from '../support/build-answer.ts';
import { buildPuzzle, buildShow } from '../support/build-show.ts';
import { givenDatabase } from '../support/database.ts';
import { PROJECT } from '../support/start-database.ts';
import { startWorker } from '../support/worker-process.ts';
import { writeTexts } from '../support/write-texts.ts';

const SEED = 500;
const COUNT = 500;

// Samuel Loyd, 1876: 1.bxa8=N, and the knight comes to b6.
const PUBLISHED = '1.bxa8=N Kxg2 2.Nb6';
const TERMS: PuzzleTerms = {
  ...DEFAULT_TERMS,
  fen: 'b7/PP6/8/8/7K/6B1/6N1/4R1bk w - - 0 1',
  task: { kind: 'mate', moves: 3 },
  published: [PUBLISHED],
};
const GOOD = [
  ['b7a8n', 'h1g2', 'a8b6', 'g1b6', 'a7b6'],
  ['b7a8n', 'h1g2', 'a8c7'],
  ['b7b8q', 'h1g2', 'b8a8'],
  ['e1g1', 'h1g1'],
];

const database = givenDatabase();

test(`[A4] ${COUNT} texts get the same outcome, flags and points from the worker and from the command line, byte for byte (seed ${SEED})`, async () => {
  const { slug, puzzleId } = await buildPuzzle(await buildShow(), { terms: TERMS, isPublished: false });
  await enqueue(db(), 'verify-puzzle', { puzzleId });
  const worker = startWorker(database);
  const isVerified = async () =>
    (await db().puzzle.findUniqueOrThrow({ where: { id: puzzleId } })).verifiedAt !== null;
  while (!(await isVerified())) await sleep(100);
  await db().$executeRaw`update puzzle set published_at = clock_timestamp() where id = ${puzzleId}`;

  const texts = writeTexts(createRandom(SEED), TERMS.fen, COUNT, GOOD);
  expect(new Set(texts).size).toBeGreaterThan(COUNT / 2);
  const idOf = new Map<number, number>();
  for (const [index, text] of texts.entries()) {
    const sent = await submitAnswer(submission(slug, text));
    if (!sent.ok) throw new Error(`${text}: ${JSON.stringify(sent.reason)}`);
    idOf.set(sent.value.answerId, index);
  }
  const left = () => db().answer.count({ where: { puzzleId, work: { not: 'done' } } });
  const begin = performance.now();
  while ((await left()) > 0 && performance.now() - begin < 120_000) await sleep(100);
  await worker.stop();
  expect(await left()).toBe(0);

  const marks = await db().mark.findMany({ where: { puzzleId, isCurrent: true } });
  const ofWorker = marks
    .map((mark) => ({ index: idOf.get(mark.answerId) ?? -1, mark }))
    .sort((a, b) => a.index - b.index)
    .map(({ index, mark }) => JSON.stringify([index, mark.outcome, mark.flags, mark.points, mark.p, mark.r]));

  const puzzleFile = join(database.dataDir, 'puzzle.json');
  writeFileSync(puzzleFile, JSON.stringify({ fen: TERMS.fen, task: 'mate in 3', published: [PUBLISHED] }));
  const input = texts.map((text, id) => JSON.stringify({ id, text })).join('\n');
  const told = spawnSync(process.execPath, ['lib/cli/main.ts', 'mark', '--puzzle', puzzleFile], {
    cwd: PROJECT,
    input,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
    env: { ...process.env, NODE_OPTIONS: '' },
  });
  expect(told.status, told.stderr).toBe(0);
  const ofCommandLine = told.stdout
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line))
    .map(({ id, outcome, flags, points, p, r }) => JSON.stringify([id, outcome, flags, points, p, r]));
  expect(ofWorker).toEqual(ofCommandLine);
  const outcomes = new Set(marks.map((mark) => mark.outcome));
  for (const outcome of ['solved', 'unfinished', 'wrong', 'impossible', 'chatter'])
    expect(outcomes, 'the texts are of many kinds').toContain(outcome);
}, 300_000);
