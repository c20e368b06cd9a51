import { beforeAll, describe, expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { GET as elsewhere } from '../../app/[...rest]/route.tsx';
import { POST as answer } from '../../app/p/[slug]/answer/route.ts';
import { GET as png } from '../../app/p/[slug]/diagram.png/route.ts';
import { GET as svg } from '../../app/p/[slug]/diagram.svg/route.ts';
import { POST as read } from '../../app/p/[slug]/read/route.ts';
import { GET as puzzlePage } from '../../app/p/[slug]/route.tsx';
import { GET as solution } from '../../app/p/[slug]/solution/route.tsx';
import { GET as receipt } from '../../app/r/[token]/route.tsx';
import { POST as withdraw } from '../../app/r/[token]/withdraw/route.ts';
import { GET as front } from '../../app/route.tsx';
import { GET as rules } from '../../app/rules/route.tsx';
import { GET as standings } from '../../app/standings/route.tsx';
import { buildPuzzle, buildShow } from '../support/build-show.ts';
import { HEALEY } from '../support/build-solution.ts';
import { givenDatabase } from '../support/database.ts';
import { ask, form, json } from './ask.ts';

givenDatabase();
let slug = '';
let draft = '';
let ahead = '';
const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self' data:; form-action 'self'; connect-src 'self'; base-uri 'none'; frame-ancestors 'none'";

beforeAll(async () => {
  const show = await buildShow();
  slug = (await buildPuzzle(show, { terms: HEALEY })).slug;
  draft = (await buildPuzzle(show, { isPublished: false })).slug;
  ahead = (await buildPuzzle(show, { opens: 10, closes: 20 })).slug;
});

const KEY = (n: number) => `AAAAAAAAAAAAAAAAAAAA${String(n).padStart(2, '0')}`;

/** Sends an answer by form and gives the receipt's path. */
async function sendForm(n: number, fields: Record<string, string> = {}): Promise<string> {
  const reply = await ask(
    answer,
    `/p/${slug}/answer`,
    { slug },
    form({ text: '1.Rh1', key: KEY(n), ...fields }),
  );
  expect(reply.status).toBe(303);
  return reply.headers.get('location') ?? '';
}

describe('[A17, A4] headers of the public pages', () => {
  const pages: [string, () => Promise<Response>][] = [
    ['/', () => ask(front, '/', {})],
    ['the puzzle', () => ask(puzzlePage, `/p/${slug}`, { slug })],
    ['/standings', () => ask(standings, '/standings', {})],
    ['/rules', () => ask(rules, '/rules', {})],
    ['an unknown address', () => ask(elsewhere, '/x/y', { rest: 'x' })],
  ];
  test.each(pages)('%s: strict policy, own cache rule, nothing inline', async (_, page) => {
    const reply = await page();
    expect(reply.headers.get('content-security-policy')).toBe(POLICY);
    expect(reply.headers.get('x-content-type-options')).toBe('nosniff');
    expect(reply.headers.get('cache-control')).toMatch(
      /^public, max-age=0, s-maxage=(\d|[1-5]\d|60), must-revalidate$/,
    );
    const html = await reply.text();
    expect(html).toMatch(/^<!doctype html><html lang="en">/);
    expect(html).not.toMatch(/<style|style=|<script(?![^>]* src=)|onclick/);
  });

  test('a puzzle page is kept by others no longer than until its close', async () => {
    const soon = await buildPuzzle(await buildShow(), { terms: HEALEY });
    await db()
      .$executeRaw`update puzzle set closes_at = clock_timestamp() + interval '7 seconds' where id = ${soon.puzzleId}`;
    const reply = await ask(puzzlePage, `/p/${soon.slug}`, { slug: soon.slug });
    const seconds = Number(/s-maxage=(\d+)/.exec(reply.headers.get('cache-control') ?? '')?.[1]);
    expect(seconds).toBeGreaterThan(0);
    expect(seconds).toBeLessThanOrEqual(7);
  });

  test('[A10] a receipt is nobody’s to keep, to list or to pass on', async () => {
    const path = await sendForm(1);
    const reply = await ask(receipt, path, { token: path.slice(3) });
    expect(reply.headers.get('cache-control')).toBe('private, no-store');
    expect(reply.headers.get('referrer-policy')).toBe('no-referrer');
    expect(reply.headers.get('x-robots-tag')).toContain('noindex');
  });

  test('[A16] pictures run nothing when opened by themselves', async () => {
    for (const [picture, type] of [
      [svg, 'image/svg+xml'],
      [png, 'image/png'],
    ] as const) {
      const reply = await ask(picture, `/p/${slug}/diagram`, { slug });
      expect(reply.headers.get('content-type')).toBe(type);
      expect(reply.headers.get('content-security-policy')).toBe("default-src 'none'; sandbox");
      expect((await reply.arrayBuffer()).byteLength).toBeGreaterThan(2000);
    }
  });
});

describe('languages', () => {
  test('the browser’s wish decides, a link overrules it and is carried on', async () => {
    const german = await ask(
      puzzlePage,
      `/p/${slug}`,
      { slug },
      { headers: { 'accept-language': 'de-AT,de' } },
    );
    expect(await german.text()).toContain('Weiß zieht und setzt in drei Zügen matt');
    const picked = await (await ask(puzzlePage, `/p/${slug}?lang=de`, { slug })).text();
    expect(picked).toContain('href="/standings?lang=de"');
    expect(picked).toContain('name="lang" value="de"');
  });
});

test('[P1] how it will be marked stands on the page before anybody answers', async () => {
  const html = await (await ask(puzzlePage, `/p/${slug}`, { slug })).text();
  expect(html).toContain('Up to 5 points for the whole line');
});

describe('reading a text back', () => {
  test('[R8] the check page shows the line and stores nothing', async () => {
    const reply = await ask(read, `/p/${slug}/read`, { slug }, form({ text: 'Th1 und dann Db1' }));
    expect(reply.status).toBe(200);
    expect(reply.headers.get('cache-control')).toBe('private, no-store');
    const html = await reply.text();
    expect(html).toContain('Is this your line?');
    expect(html).toMatch(/name="key" value="[\w-]{22}"/);
    expect(await db().answer.count({ where: { text: { contains: 'Th1' } } })).toBe(0);
  });

  test('the same as data for the board', async () => {
    const reply = await ask(read, `/p/${slug}/read`, { slug }, json({ text: 'Rd1-h1 Bd7 Qb1' }));
    expect(await reply.json()).toMatchObject({
      kind: 'answer',
      readings: [{ line: ['d1h1', 'b5d7', 'g6b1'], text: '1 Rh1 Bd7 2 Qb1' }],
    });
  });

  test('[A15] a text with markup is shown as typed', async () => {
    const text = '<script>alert(1)</script> Rh1 "><img src=x onerror=alert(1)>';
    const html = await (await ask(read, `/p/${slug}/read`, { slug }, form({ text, name: '"><b>' }))).text();
    expect(html).not.toMatch(/<script>|<img|<b>/);
    expect(html).toContain('&lt;script&gt;');
  });

  test('an empty text is told so, and nothing is lost by a text without a move', async () => {
    expect((await ask(read, `/p/${slug}/read`, { slug }, form({ text: ' ' }))).status).toBe(422);
    const html = await (await ask(read, `/p/${slug}/read`, { slug }, form({ text: 'what a game' }))).text();
    expect(html).toContain('what a game</textarea>');
  });
});

describe('taking an answer', () => {
  test('a form is stored as received and leads to its receipt; a device cookie comes along', async () => {
    const reply = await ask(
      answer,
      `/p/${slug}/answer`,
      { slug },
      form({ text: '1.Rh1  Bd7\r\n2.Qb1', key: KEY(2), name: 'Ilse' }),
    );
    expect(reply.status).toBe(303);
    expect(reply.headers.get('set-cookie')).toMatch(
      /^device=[\w-]{22}; Path=\/; Max-Age=\d+; HttpOnly; SameSite=Lax$/,
    );
    const stored = await db().answer.findUniqueOrThrow({ where: { clientKey: KEY(2) } });
    expect(stored).toMatchObject({
      text: '1.Rh1  Bd7\r\n2.Qb1',
      name: 'Ilse',
      channel: 'page',
      hasMeant: false,
    });
  });

  test('[A9] fields that nobody may send change nothing', async () => {
    const more = { outcome: 'solved', points: '5', receivedAt: '2020-01-01', solverId: '1', late: 'false' };
    await sendForm(3, more);
    const stored = await db().answer.findUniqueOrThrow({ where: { clientKey: KEY(3) } });
    expect(stored.receivedAt.getFullYear()).toBeGreaterThan(2024);
    expect(await db().mark.count({ where: { answerId: stored.id } })).toBe(0);
  });

  test('[F5] the same sending again leads to the same receipt; another text under its key is refused', async () => {
    const first = await sendForm(4);
    expect(await sendForm(4)).toBe(first);
    const other = await ask(answer, `/p/${slug}/answer`, { slug }, form({ text: '1.Qb1', key: KEY(4) }));
    expect(other.status).toBe(409);
    expect(await other.text()).toContain('Qb1');
  });

  test('the API takes JSON without a page, and says when and whether in time', async () => {
    const reply = await ask(
      answer,
      `/p/${slug}/answer`,
      { slug },
      json({ text: 'Rh1', key: KEY(5), meant: ['d1h1'] }),
    );
    expect(reply.status).toBe(201);
    expect(await reply.json()).toMatchObject({
      isLate: false,
      receipt: expect.stringMatching(/^\/r\/[\w-]{22}$/),
    });
    expect(await db().answer.findUnique({ where: { clientKey: KEY(5) } })).toMatchObject({
      channel: 'api',
      meant: ['d1h1'],
    });
  });

  test('a name with a direction character is refused in words, and the text stays', async () => {
    const reply = await ask(
      answer,
      `/p/${slug}/answer`,
      { slug },
      form({ text: '1.Rh1 stays', key: KEY(6), name: 'a\u202eb' }),
    );
    expect(reply.status).toBe(422);
    const html = await reply.text();
    expect(html).toContain('1.Rh1 stays');
    expect(html).toContain('role="alert"');
  });

  const FOREIGN: [string, Record<string, string>][] = [
    ['another site', { origin: 'https://evil.example' }],
    ['a sandboxed frame', { origin: 'null' }],
    ['nowhere', {}],
    ['another site that the browser names', { 'sec-fetch-site': 'cross-site' }],
  ];
  test.each(FOREIGN)('[A12] a form from %s is refused and changes nothing', async (_, headers) => {
    const before = await db().answer.count();
    const reply = await ask(
      answer,
      `/p/${slug}/answer`,
      { slug },
      {
        method: 'POST',
        headers: { 'content-type': 'application/x-www-form-urlencoded', ...headers },
        body: new URLSearchParams({ text: '1.Rh1', key: KEY(7) }).toString(),
      },
    );
    expect(reply.status).toBe(403);
    expect(await db().answer.count()).toBe(before);
  });
});

describe('[A24] bodies that are not taken', () => {
  const BODIES: [string, number, { headers: Record<string, string>; body: string }][] = [
    [
      'larger than 64 kB',
      413,
      {
        headers: { 'content-type': 'application/x-www-form-urlencoded' },
        body: `text=${'a'.repeat(70_000)}`,
      },
    ],
    [
      'said to be larger, unread',
      413,
      {
        headers: { 'content-type': 'application/x-www-form-urlencoded', 'content-length': '99999999' },
        body: 'text=Rh1',
      },
    ],
    [
      'compressed',
      415,
      { headers: { 'content-type': 'application/json', 'content-encoding': 'gzip' }, body: 'x' },
    ],
    ['JSON sent as text', 415, { headers: { 'content-type': 'text/plain' }, body: '{"text":"Rh1"}' }],
    ['broken JSON', 400, { headers: { 'content-type': 'application/json' }, body: '{"text":' }],
    [
      'a list where an object belongs',
      400,
      { headers: { 'content-type': 'application/json' }, body: '["Rh1"]' },
    ],
  ];
  test.each(BODIES)('%s: %i, said in words', async (_, status, asked) => {
    for (const handler of [read, answer]) {
      const reply = await ask(handler, `/p/${slug}/x`, { slug }, { method: 'POST', ...asked });
      expect(reply.status).toBe(status);
      expect((await reply.text()).length).toBeGreaterThan(300);
    }
  });
});

describe('a receipt', () => {
  test('can be changed until the close: the same receipt, the newer answer', async () => {
    const path = await sendForm(10, { text: '1.Qb1' });
    const changed = await sendForm(11, { text: '1.Rh1 Bd7 2.Qb1', receipt: path.slice(3) });
    const html = await (await ask(receipt, changed, { token: changed.slice(3) })).text();
    expect(html).toContain('2.');
    const solvers = await db().answer.findMany({
      where: { clientKey: { in: [KEY(10), KEY(11)] } },
      select: { solverId: true },
    });
    expect(new Set(solvers.map((one) => one.solverId)).size).toBe(1);
  });

  test('can be withdrawn by a form of its own page: name and text are gone', async () => {
    const path = await sendForm(12, { text: '1.Rh1 secret words', name: 'Withdrawn Person' });
    const token = path.slice(3);
    const own = {
      ...form({}),
      headers: { ...form({}).headers, origin: 'null', 'sec-fetch-site': 'same-origin' },
    };
    expect((await ask(withdraw, `${path}/withdraw`, { token }, own)).status).toBe(303);
    const html = await (await ask(receipt, path, { token })).text();
    expect(html).toContain('Withdrawn');
    expect(html).not.toMatch(/secret words|Withdrawn Person/);
  });

  test('[A10] an unknown token gives the same page as nonsense', async () => {
    const unknown = await ask(receipt, `/r/${KEY(99)}`, { token: KEY(99) });
    const nonsense = await ask(elsewhere, '/nonsense', { rest: 'nonsense' });
    expect(unknown.status).toBe(404);
    expect(await unknown.text()).toBe(await nonsense.text());
  });
});

describe('[A6] what is not public yet does not exist', () => {
  const ROUTES: [string, (path: string, slug: string) => Promise<Response>][] = [
    ['page', (path, slug) => ask(puzzlePage, path, { slug })],
    ['JSON', (path, slug) => ask(puzzlePage, path, { slug }, { headers: { accept: 'application/json' } })],
    ['SVG', (path, slug) => ask(svg, path, { slug })],
    ['PNG', (path, slug) => ask(png, path, { slug })],
    ['solution', (path, slug) => ask(solution, path, { slug })],
    ['reading', (path, slug) => ask(read, path, { slug }, form({ text: 'Ra8' }))],
    ['answer', (path, slug) => ask(answer, path, { slug }, form({ text: 'Ra8', key: KEY(50) }))],
  ];
  test.each(ROUTES)('drafts and puzzles to come are the same 404 as nonsense: %s', async (_, route) => {
    const nonsense = await route('/p/nonsense', 'nonsense');
    const expected = { status: nonsense.status, headers: [...nonsense.headers], body: await nonsense.text() };
    expect(expected.status).toBe(404);
    for (const hidden of [draft, ahead]) {
      const reply = await route(`/p/${hidden}`, hidden);
      expect({ status: reply.status, headers: [...reply.headers], body: await reply.text() }).toEqual(
        expected,
      );
    }
  });

  test('[A5] before the reveal a solution is asked for in vain, *Why not?* too', async () => {
    const reply = await ask(solution, `/p/${slug}/solution?try=d1h1`, { slug });
    expect(reply.status).toBe(404);
    expect(await db().want.count()).toBe(0);
  });
});
