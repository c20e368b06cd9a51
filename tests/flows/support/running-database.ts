// The database of a running program, for what no page can bring about: a verdict that the engine leaves unclear.

import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import pg from 'pg';
import { loadSecrets } from '#lib/machine/secrets.ts';
import { findDatabasePlace } from '#lib/start/database-place.ts';
import { databaseUrl } from '#lib/start/embedded-database.ts';

const PROJECT = resolve(import.meta.dirname, '../../..');

async function withDatabase<T>(dataDir: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const { dataFolder } = findDatabasePlace(PROJECT, join(dataDir, 'database'));
  const port = Number(readFileSync(join(dataFolder, 'postmaster.pid'), 'utf8').split('\n')[3]);
  const client = new pg.Client({
    connectionString: databaseUrl(port, loadSecrets(dataDir).databasePassword),
  });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}

/**
 * Makes the book call a first move of a puzzle unclear, as if the budget had ended. The opening moves by a second,
 * so that a worker that knows the book loads it anew.
 */
export async function makeUnclear(dataDir: string, slug: string, move: string): Promise<void> {
  await withDatabase(dataDir, async (client) => {
    const found = await client.query<{ id: number; start: string }>(
      "select id, split_part(fen, ' ', 1) as start from puzzle where slug = $1",
      [slug],
    );
    const puzzle = found.rows[0];
    if (puzzle === undefined) throw new Error(`no puzzle ${slug}`);
    await client.query('begin');
    await client.query(
      `create temporary table changed on commit drop as select * from book_row
       where puzzle_id = ${puzzle.id} and move = $1 and split_part(position, ' ', 1) = $2`,
      [move, puzzle.start],
    );
    await client.query('delete from book_row where id in (select id from changed)');
    await client.query(
      `update changed set id = nextval(pg_get_serial_sequence('book_row', 'id')), verdict = 'unclear',
         evidence = '{"kind":"budget"}', proof_id = null, mate_in = null, replies = '[]', adequate = '{}'`,
    );
    const made = await client.query('insert into book_row select * from changed');
    if (made.rowCount !== 1) throw new Error(`${move} is not in the book once, but ${made.rowCount} times`);
    await client.query(`update puzzle set opens_at = opens_at + interval '1 second' where id = ${puzzle.id}`);
    await client.query('commit');
  });
}
