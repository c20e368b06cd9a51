import { beforeAll, describe, expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { settleSecondLook } from '#lib/usecases/answers/settle-second-look.ts';
import { withdrawAnswer } from '#lib/usecases/answers/withdraw-answer.ts';
import { GET as receipt } from '../../app/r/[token]/route.tsx';
import { POST as secondLook } from '../../app/r/[token]/second-look/route.ts';
import { buildLook, buildRevealed, lookOf } from '../support/build-look.ts';
import { buildHealey, markEverything, send } from '../support/build-solution.ts';
import { givenDatabase } from '../support/database.ts';
import { accepted } from '../support/positions.ts';
import { type Asked, ask, form, json } from './ask.ts';

givenDatabase();

let right = '';
let wrong = '';
const NOBODY = 'AAAAAAAAAAAAAAAAAAAAAA';

beforeAll(async () => {
  const { slug, puzzleId, terms } = await buildHealey();
  right = (await send(slug, '1.Rh1', { name: 'Somebody' })).token;
  wrong = (await send(slug, '1.Qd6+', { name: 'Somebody' })).token;
  await markEverything(puzzleId, terms);
});

const post = (token: string, asked: Asked) => ask(secondLook, `/r/${token}/second-look`, { token }, asked);
const page = (token: string, asked: Asked = {}) => ask(receipt, `/r/${token}`, { token }, asked);

/** What a reply says when everything that was sent is taken out. */
async function shape(reply: Response, token: string): Promise<string> {
  const headers = [...reply.headers].map(([name, value]) => `${name}: ${value}`).join('\n');
  const body = (await reply.text())
    .replaceAll(token, 'TOKEN')
    .replace(/<svg.*?<\/svg>/gs, 'DIAGRAM')
    .replace(/<time[^>]*>[^<]*<\/time>/g, 'TIME')
    .replace(/<blockquote.*?<\/blockquote>/gs, 'TEXT')
    .replace(/<textarea.*?<\/textarea>/gs, 'TEXT')
    .replace(/<ul class="plain">.*?<\/ul>/gs, 'LINES');
  return `${reply.status}\n${headers}\n${body}`;
}

describe('[T2] before the reveal', () => {
  test('a solver and a loser get the same reply, as page and as JSON, and nothing is kept', async () => {
    for (const asked of [form({ words: 'why?' }), json({ words: 'why?' })]) {
      const ofRight = await shape(await post(right, asked), right);
      expect(ofRight).toBe(await shape(await post(wrong, asked), wrong));
      expect(ofRight).toMatch(/^409\n/);
      expect(ofRight).toContain('after the reveal');
    }
    expect(await db().secondLook.count()).toBe(0);
  });

  test('no receipt offers it', async () => {
    expect(await (await page(right)).text()).not.toContain('second-look');
    expect(await (await page(right, { headers: { accept: 'application/json' } })).json()).toMatchObject({
      mark: null,
      look: null,
    });
  });
});

describe('[A2] after the reveal', () => {
  test('a form leads back to the receipt, which shows that the look waits, then the host’s words', async () => {
    const { token, puzzleId, answerId, memberId } = await buildRevealed();
    expect(await (await page(token)).text()).toContain(`action="/r/${token}/second-look"`);
    const asked = await post(token, form({ words: 'The knight is pinned.', lang: 'en' }));
    expect([asked.status, asked.headers.get('location')]).toEqual([303, `/r/${token}?lang=en#second-look`]);
    expect(asked.headers.get('cache-control')).toBe('private, no-store');
    const waiting = await (await page(token)).text();
    expect(waiting).toContain('The knight is pinned.');
    expect(waiting).toContain('It waits for the host.');
    expect(waiting).not.toContain(`action="/r/${token}/second-look"`);
    const reply = 'It is not: b7 holds nothing.';
    const word = { puzzleId, answerId, memberId, outcome: null, points: null, why: 'x' };
    accepted(await settleSecondLook({ ...word, reply }));
    const settled = await page(token);
    expect(settled.headers.get('cache-control')).toBe('private, no-store');
    const html = await settled.text();
    expect(html).toContain('Looked at again: the mark stands.');
    expect(html).toContain(reply);
    const german = await (await ask(receipt, `/r/${token}?lang=de`, { token })).text();
    expect(german).toContain('Die Wertung bleibt.');
  });

  test('a program gets the same as data', async () => {
    const { token } = await buildRevealed();
    const asked = await post(token, json({ words: 'please' }));
    expect([asked.status, await asked.json()]).toEqual([201, { receipt: `/r/${token}#second-look` }]);
    const shown = await (await page(token, { headers: { accept: 'application/json' } })).json();
    expect(shown.look).toMatchObject({ words: 'please', result: null, reply: null });
    const again = await post(token, json({ words: 'please' }));
    expect([again.status, (await again.json()).error]).toEqual([409, 'asked-already']);
  });

  test('words in JSON that are no text are refused with what was expected, and the look is not used up', async () => {
    const { token, answerId } = await buildRevealed();
    for (const words of [['The knight', 'is pinned'], { en: 'please' }, 7, true, null]) {
      const asked = await post(token, json({ words }));
      expect([words, asked.status, await asked.json()]).toMatchObject([
        words,
        400,
        { error: 'not-text', reason: { field: 'words', expected: 'text' } },
      ]);
    }
    expect(await lookOf(answerId)).toBeNull();
    expect((await post(token, json({}))).status).toBe(201);
  });

  test('twenty forms at once: one is taken, nineteen are told that there is one', async () => {
    const { token, answerId } = await buildRevealed();
    const replies = await Promise.all(
      Array.from({ length: 20 }, (_, i) => post(token, form({ words: `try ${i}` }))),
    );
    const statuses = replies.map((reply) => reply.status);
    expect(statuses.filter((status) => status === 303)).toHaveLength(1);
    expect(statuses.filter((status) => status === 409)).toHaveLength(19);
    expect(await db().secondLook.count({ where: { answerId } })).toBe(1);
  });

  test('10,000 characters are refused with the number, and come back in the field', async () => {
    const { token, answerId } = await buildRevealed();
    const words = `ask ${'a'.repeat(9_996)}`;
    const reply = await post(token, form({ words }));
    expect(reply.status).toBe(422);
    const html = await reply.text();
    expect(html).toContain('This has 10,000 characters; at most 500 are taken.');
    expect(html).toContain(words);
    expect(html).toContain('<details open="">');
    expect(await lookOf(answerId)).toBeNull();
  });

  test('[A15] markup and direction signs are shown as typed, in a block of their own', async () => {
    const words = '<img src=x onerror=alert(1)> \u202eabc \u2066<script>alert(2)</script>';
    const { token, puzzleId, answerId, memberId } = await buildLook(words);
    const word = { puzzleId, answerId, memberId, outcome: null, points: null, why: 'x' };
    accepted(await settleSecondLook({ ...word, reply: `</blockquote>${words}` }));
    const html = await (await page(token)).text();
    expect(html).not.toMatch(/<img|<script(?![^>]* src=)/);
    expect(html).toContain('&lt;img src=x onerror=alert(1)&gt; \u202eabc');
    expect(html.match(/<blockquote class="quote remark from-outside" dir="auto">/g)).toHaveLength(2);
  });

  test('[A9] fields that are not asked for change nothing', async () => {
    const { token, answerId } = await buildRevealed();
    const more = { result: 'changed', reply: 'yes', outcome: 'solved', settledAt: '2020-01-01', answer: '1' };
    expect((await post(token, json({ words: 'hm', ...more }))).status).toBe(201);
    expect(await lookOf(answerId)).toMatchObject({ result: null, reply: null, settledAt: null });
    expect(await db().mark.count({ where: { answerId } })).toBe(1);
  });
});

describe('what is refused', () => {
  test('[A12] from a foreign page, from none, and as plain text', async () => {
    const { token, answerId } = await buildRevealed();
    for (const origin of ['https://evil.example', 'null'])
      expect((await post(token, form({ words: 'x' }, origin))).status).toBe(403);
    const bare = { method: 'POST', headers: { 'content-type': 'application/x-www-form-urlencoded' } };
    expect((await post(token, { ...bare, body: 'words=x' })).status).toBe(403);
    const plain = { method: 'POST', headers: { 'content-type': 'text/plain' }, body: '{"words":"x"}' };
    expect((await post(token, plain)).status).toBe(415);
    expect(await lookOf(answerId)).toBeNull();
  });

  test('[A8, A10] an unknown receipt is the same 404 as nonsense; a withdrawn one says so', async () => {
    const unknown = await post(NOBODY, form({ words: 'x' }));
    const nonsense = await post('zzz', form({ words: 'x' }));
    expect([unknown.status, nonsense.status]).toEqual([404, 404]);
    expect(await unknown.text()).toBe(await nonsense.text());
    const { token, answerId } = await buildLook('erase me');
    await withdrawAnswer({ token });
    expect((await post(token, form({ words: 'x' }))).status).toBe(409);
    expect(await (await page(token)).text()).not.toContain('erase me');
    expect((await lookOf(answerId))?.words).toBe('');
  });
});
