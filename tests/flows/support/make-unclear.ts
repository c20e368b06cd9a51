import { inDatabase } from './app-database.ts';

/**
 * Makes the book call a first move of a puzzle unclear, as if the budget had ended. The opening moves by a second,
 * so that a worker that knows the book loads it anew.
 */
export async function makeUnclear(dataDir: string, slug: string, move: string): Promise<void> {
  await inDatabase(dataDir, async (client) => {
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
