// From answer to mark, through the running program: web, database, queue and worker as `npm start`
// starts them, on the sample show's open puzzle. First 200 answers one after another, from POST to the
// committed mark; then the worker's own rate over a backlog of answers whose positions are in the book.

import { randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { loadSecrets } from '#lib/machine/secrets.ts';
import { databaseUrl } from '#lib/start/embedded-database.ts';
import { type RunningApp, startRunningApp } from '../support/running-app.ts';

const SINGLE = 200;
const BACKLOG = 5_000;
const DEADLINE_MS = 180_000;

async function until<T>(ask: () => Promise<T | null>, pauseMs: number, what: string): Promise<T> {
  const end = Date.now() + DEADLINE_MS;
  while (Date.now() < end) {
    const got = await ask();
    if (got !== null) return got;
    await new Promise((resolve) => setTimeout(resolve, pauseMs));
  }
  throw new Error(`${what} took longer than ${DEADLINE_MS / 1000} s`);
}

async function send(app: RunningApp, slug: string, text: string): Promise<Date> {
  const reply = await fetch(`${app.origin}/p/${slug}/answer`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', accept: 'application/json', origin: app.origin },
    body: JSON.stringify({ text, key: randomBytes(16).toString('base64url'), name: '' }),
  });
  if (reply.status !== 201) throw new Error(`answer refused: ${reply.status} ${await reply.text()}`);
  const body: { receivedAt: string } = await reply.json();
  return new Date(body.receivedAt);
}

function connect(app: RunningApp): pg.Client {
  const port = Number(readFileSync(join(app.dataDir, 'database/postmaster.pid'), 'utf8').split('\n')[3]);
  return new pg.Client({ connectionString: databaseUrl(port, loadSecrets(app.dataDir).databasePassword) });
}

async function measure(app: RunningApp, client: pg.Client): Promise<void> {
  const number = async (sql: string): Promise<number> => Number((await client.query(sql)).rows[0]?.n ?? 0);
  const slug = await until(
    async () => {
      const { rows } = await client.query(
        "select slug from puzzle p where published_at is not null and closes_at > now() and exists (select 1 from answer a where a.puzzle_id = p.id) and (select count(*) from log where kind = 'sample-made') > 0",
      );
      return typeof rows[0]?.slug === 'string' ? rows[0].slug : null;
    },
    200,
    'the sample',
  );
  // Texts of the sample's own viewers for this puzzle: every position they reach is in the book already.
  const { rows } = await client.query(
    'select distinct a.text from answer a join puzzle p on p.id = a.puzzle_id where p.slug = $1 and a.text <> $2',
    [slug, ''],
  );
  const texts = rows.map((row) => String(row.text));
  const text = (i: number): string => texts[i % texts.length] ?? '';
  const marked = () => number('select count(*) as n from mark where is_current');
  const times: number[] = [];
  for (let i = 0; i < SINGLE; i += 1) {
    const before = await marked();
    const start = performance.now();
    await send(app, slug, text(i));
    await until(async () => ((await marked()) > before ? true : null), 2, 'one mark');
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  const at = (part: number): string => (times[Math.floor(times.length * part)] ?? Number.NaN).toFixed(0);
  process.stdout.write(
    `from answer to mark, ${SINGLE} answers: median ${at(0.5)} ms, 95 in 100 within ${at(0.95)} ms, worst ${at(0.9999)} ms\n`,
  );
  const pid = await number('select pid as n from worker_beat order by beat_at desc limit 1');
  const before = await marked();
  process.kill(pid, 'SIGSTOP');
  try {
    for (let i = 0; i < BACKLOG; i += 20)
      await Promise.all(Array.from({ length: 20 }, (_, k) => send(app, slug, text(i + k))));
  } finally {
    process.kill(pid, 'SIGCONT');
  }
  const start = performance.now();
  await until(async () => ((await marked()) >= before + BACKLOG ? true : null), 20, 'the backlog');
  const seconds = (performance.now() - start) / 1000;
  process.stdout.write(
    `worker, ${BACKLOG} answers over ${texts.length} texts, positions known: ${(BACKLOG / seconds).toFixed(0)} a second\n`,
  );
}

const app = await startRunningApp(['--sample']);
try {
  const client = connect(app);
  await client.connect();
  try {
    await measure(app, client);
  } finally {
    await client.end();
  }
} finally {
  await app.stop();
}
