import { describe, expect, test } from 'vitest';
import { randomToken } from '#lib/machine/tokens.ts';
import { db } from '#lib/store/client.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { extendBook } from '#lib/usecases/puzzles/extend-book.ts';
import { extendPuzzle } from '#lib/usecases/puzzles/extend-puzzle.ts';
import { proposeAmendment } from '#lib/usecases/puzzles/propose-amendment.ts';
import { putAmendmentInForce } from '#lib/usecases/puzzles/put-amendment-in-force.ts';
import { revealPuzzle } from '#lib/usecases/puzzles/reveal-puzzle.ts';
import { verifyAmendment } from '#lib/usecases/puzzles/verify-amendment.ts';
import { POST as answer } from '../../app/p/[slug]/answer/route.ts';
import { GET as svg } from '../../app/p/[slug]/diagram.svg/route.ts';
import { POST as read } from '../../app/p/[slug]/read/route.ts';
import { GET as puzzlePage } from '../../app/p/[slug]/route.tsx';
import { GET as solution } from '../../app/p/[slug]/solution/route.tsx';
import { GET as receipt } from '../../app/r/[token]/route.tsx';
import { amend, buildVerified, typedAmendment } from '../support/amend.ts';
import { MATE_IN_ONE } from '../support/build-show.ts';
import { revealNow } from '../support/build-solution.ts';
import { givenDatabase } from '../support/database.ts';
import { verifyHere } from '../support/engine-in-process.ts';
import { formsIn, moveForms } from '../support/move-forms.ts';
import { accepted, positionOf } from '../support/positions.ts';
import { type Asked, ask, form, json } from './ask.ts';

givenDatabase();

const ROOK_B1 = { fen: '6k1/5ppp/8/8/8/8/5PPP/1R4K1 w - - 0 1', published: ['Rb8#'] };
const OPEN = { opens: -60, closes: 60 };

type Handler = Parameters<typeof ask<{ slug: string }>>[0];
const at = (handler: Handler, slug: string, path = '', asked: Asked = {}) =>
  ask(handler, `/p/${slug}${path}`, { slug }, asked);

/** A page as it is, without what is fresh each time. */
async function pageOf(slug: string): Promise<string> {
  const reply = await at(puzzlePage, slug);
  expect(reply.status).toBe(200);
  return (await reply.text()).replace(/ id="[^"]*"|<span class="red">[^<]*<\/span>/g, '');
}

async function sendSeen(slug: string, text: string, fields: Record<string, string>): Promise<string> {
  const reply = await at(answer, slug, '/answer', form({ text, key: randomToken(), ...fields }));
  expect(reply.status).toBe(303);
  return (reply.headers.get('location') ?? '').replace('/r/', '');
}

async function receiptOf(token: string): Promise<string> {
  const reply = await ask(receipt, `/r/${token}`, { token });
  return reply.text();
}

describe('[A6] the notice', () => {
  test('[A4] of a moved close stands on the puzzle page with both times and the host’s words, at the same address', async () => {
    const { puzzleId, memberId, slug } = await buildVerified(MATE_IN_ONE, OPEN);
    expect(await pageOf(slug)).not.toContain('class="corrections"');
    const moved = { closesAt: '2126-11-27T18:00', zone: 'UTC', note: 'One <b>more</b> day.' };
    accepted(await extendPuzzle({ puzzleId, memberId, ...moved }));
    const page = await pageOf(slug);
    expect(page).toContain('The close was moved: formerly');
    expect(page).toContain('dateTime="2126-11-27T18:00:00.000Z"');
    expect(page).toContain('One &lt;b&gt;more&lt;/b&gt; day.');
    const reply = await at(puzzlePage, slug, '', { headers: { accept: 'application/json' } });
    expect(await reply.json()).toMatchObject({ slug, revision: 1, corrections: [{ kind: 'extended' }] });
    const seconds = /s-maxage=(\d+)/.exec(reply.headers.get('cache-control') ?? '')?.[1];
    expect(Number(seconds), 'nobody keeps the old page longer').toBeLessThanOrEqual(60);
  });

  test('of a void puzzle thanks the solvers, on the page and on the receipt', async () => {
    const { puzzleId, memberId, slug } = await buildVerified(MATE_IN_ONE, OPEN);
    const token = await sendSeen(slug, 'Ra8#', { seen: '1' });
    accepted(await revealPuzzle({ puzzleId, memberId, asVoid: true, note: 'A pawn was missing.' }));
    expect(await pageOf(slug), 'a time that no longer matters').not.toContain('class="closing"');
    for (const page of [await pageOf(slug), await receiptOf(token)]) {
      expect(page).toContain('The puzzle was taken out of the count.');
      expect(page).toContain('A pawn was missing.');
      expect(page).toContain('thank you for solving');
    }
  });

  test('[T2] of corrected keys says nothing of a solution before the reveal, and names it afterwards', async () => {
    const { slug, ...puzzle } = await buildVerified(MATE_IN_ONE, OPEN);
    const words = moveForms(positionOf(MATE_IN_ONE.fen), 'a1a8');
    await amend(puzzle, { published: ['1.Ra8 mate'] });
    const page = await pageOf(slug);
    expect(page).toContain('The puzzle was checked again. Position and task stand as they are.');
    const data = await (await at(puzzlePage, slug, '', { headers: { accept: 'application/json' } })).text();
    expect(data).not.toContain('keys');
    // The hint of the form names a first move as an example, as on every page of an open puzzle.
    const notice = /<section class="corrections".*?<\/section>/s.exec(page)?.[0] ?? '';
    expect(notice).toContain('A misprint, sorry.');
    expect(formsIn(notice, words)).toEqual([]);
    expect(formsIn(data, words)).toEqual([]);
    const checked = await (await at(read, slug, '/read', form({ text: 'Kf1', seen: '1' }))).text();
    expect(checked, 'nobody saw a difference').not.toContain('was corrected while you were writing');
    await revealNow(puzzle.puzzleId);
    const shown = await (await at(solution, slug, '/solution')).text();
    expect(shown).toContain('The published solution was corrected.');
  });
});

test('[T2] an amendment in the making changes no byte of anything public until it takes force', async () => {
  const puzzle = await buildVerified(MATE_IN_ONE, OPEN);
  const { slug, puzzleId, memberId } = puzzle;
  const token = await sendSeen(slug, 'Ra8#', { seen: '1' });
  const everything = async () => [
    await pageOf(slug),
    await (await at(svg, slug, '/diagram.svg')).text(),
    (await receiptOf(token)).replace(/ id="[^"]*"/g, ''),
    (await (await at(read, slug, '/read', json({ text: 'Ra8', seen: 1 }))).text()).replace(
      /"key":"[^"]*"/,
      '',
    ),
  ];
  const before = await everything();
  accepted(await proposeAmendment(await typedAmendment(puzzle, ROOK_B1)));
  expect(await everything()).toEqual(before);
  await verifyAmendment({ puzzleId, verify: verifyHere });
  expect(await everything()).toEqual(before);
  accepted(await putAmendmentInForce({ puzzleId, memberId, overrideReason: null }));
  const after = await everything();
  expect(after[0]).toContain('The position was corrected.');
  expect(after[1], 'the picture changes with it').not.toBe(before[1]);
});

describe('[A6] which revision a sender saw', () => {
  test('the page says it, the check page keeps saying it, and the receipt shows that position', async () => {
    const puzzle = await buildVerified(MATE_IN_ONE, OPEN);
    const { slug, puzzleId } = puzzle;
    expect(await pageOf(slug)).toContain('<input type="hidden" name="seen" value="1"/>');
    const checked = await (await at(read, slug, '/read', form({ text: 'Ra8#', seen: '1' }))).text();
    expect(checked).toContain('name="seen" value="1"');
    expect(checked).not.toContain('was corrected while you were writing');
    await amend(puzzle, ROOK_B1);
    expect(await pageOf(slug)).toContain('<input type="hidden" name="seen" value="2"/>');

    // A puzzle page from before, sent on now: the line is read in the position that its sender sees.
    const stale = await (await at(read, slug, '/read', form({ text: 'Ra8#', seen: '1' }))).text();
    expect(stale).toContain('name="seen" value="1"');
    expect(stale).toContain('was corrected while you were writing');
    expect(stale).toContain('Is this your line?');
    const fresh = await (await at(read, slug, '/read', form({ text: 'Rb8#', seen: '2' }))).text();
    expect(fresh).toContain('name="seen" value="2"');
    expect(fresh).not.toContain('was corrected while you were writing');

    const old = await sendSeen(slug, 'Ra8#', { seen: '1', reading: 'a1a8' });
    const told = await db().answer.findFirstOrThrow({ where: { puzzleId }, orderBy: { id: 'desc' } });
    expect(told.seenRevision).toBe(1);
    const page = await receiptOf(old);
    expect(page).toContain('The position here is the one that your answer is marked on.');
    expect(page).toContain('White: king g1; rook a8;');
    expect(page, 'a change answers the puzzle as it stands now').toContain('name="seen" value="2"');

    for (let open = true; open; ) {
      await markAnswers({ puzzleId });
      open = (await extendBook({ puzzleId, verify: verifyHere })) > 0;
    }
    await revealNow(puzzleId);
    expect(await receiptOf(old)).toContain('Solved');
  });

  const odd: [string, Record<string, unknown>][] = [
    ['a revision that is not there', { seen: 7 }],
    ['a word', { seen: 'the second' }],
    ['an object', { seen: { revision: 1 } }],
    ['nothing', {}],
  ];
  test.each(odd)('[A9] %s is "not told": the answer is taken all the same', async (_what, fields) => {
    const puzzle = await buildVerified(MATE_IN_ONE, OPEN);
    await amend(puzzle, ROOK_B1);
    const body = {
      text: 'Rb8#',
      key: randomToken(),
      meant: ['b1b8'],
      revision: 1,
      seenRevision: 1,
      ...fields,
    };
    const reply = await at(answer, puzzle.slug, '/answer', json(body));
    expect(reply.status).toBe(201);
    const row = await db().answer.findFirstOrThrow({ where: { puzzleId: puzzle.puzzleId } });
    expect(row.seenRevision).toBeNull();
  });

  test('a program says it as a number, and is told which one its text was read on', async () => {
    const puzzle = await buildVerified(MATE_IN_ONE, OPEN);
    await amend(puzzle, ROOK_B1);
    const back = await at(read, puzzle.slug, '/read', json({ text: 'Ra8#', seen: 1 }));
    expect(await back.json()).toMatchObject({ seen: 1, readings: [{ line: ['a1a8'] }] });
    const now = await at(read, puzzle.slug, '/read', json({ text: 'Rb8#' }));
    expect(await now.json()).toMatchObject({ seen: 2, readings: [{ line: ['b1b8'] }] });
    const sent = await at(
      answer,
      puzzle.slug,
      '/answer',
      json({ text: 'Ra8#', key: randomToken(), seen: 1 }),
    );
    expect(sent.status).toBe(201);
    const row = await db().answer.findFirstOrThrow({ where: { puzzleId: puzzle.puzzleId } });
    expect(row.seenRevision).toBe(1);
  });
});
