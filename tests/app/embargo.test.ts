import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { db } from '#lib/store/client.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { showDeskPuzzle } from '#lib/usecases/puzzles/show-desk-puzzle.ts';
import { verifyPuzzle } from '#lib/usecases/puzzles/verify-puzzle.ts';
import { GET as elsewhere } from '../../app/[...rest]/route.tsx';
import { GET as png } from '../../app/p/[slug]/diagram.png/route.ts';
import { GET as svg } from '../../app/p/[slug]/diagram.svg/route.ts';
import { POST as read } from '../../app/p/[slug]/read/route.ts';
import { GET as puzzlePage } from '../../app/p/[slug]/route.tsx';
import { GET as solution } from '../../app/p/[slug]/solution/route.tsx';
import { GET as receipt } from '../../app/r/[token]/route.tsx';
import { GET as front } from '../../app/route.tsx';
import { GET as rules } from '../../app/rules/route.tsx';
import { GET as standings } from '../../app/standings/route.tsx';
import { buildPuzzle, buildShow } from '../support/build-show.ts';
import { send } from '../support/build-solution.ts';
import { givenDatabase } from '../support/database.ts';
import { verifyHere } from '../support/engine-in-process.ts';
import { formsIn, moveForms, pngWords } from '../support/move-forms.ts';
import { positionOf } from '../support/positions.ts';
import { type Asked, ask, form, json } from './ask.ts';

givenDatabase();

// Fritz Karge, STERN 46/79, 8.11.1979: mate in three, the only key 1 Qe7 (tests/cases/mates.epd, problem.P02).
const KARGE: PuzzleTerms = {
  ...DEFAULT_TERMS,
  fen: '5Q2/8/2P1pP2/4k3/4P3/8/4N3/R3K2R w KQ - 0 1',
  task: { kind: 'mate', moves: 3 },
  published: ['1.Qe7'],
};
const FORMS = moveForms(positionOf(KARGE.fen), 'f8e7');
// The key is sent by nobody: a receipt shows its own text, and that may not make the search blind.
const WRONG = ['1.Qd8 Kxe4 2.O-O', 'Rb1 and mates', 'Qh8+', 'zzz Nf9', 'D von f8 weg', 'Ra5+ Kxe4'];

let place: Awaited<ReturnType<typeof buildShow>>;
let puzzleId = 0;
let slug = '';
const tokens: string[] = [];

beforeAll(async () => {
  place = await buildShow();
  ({ puzzleId, slug } = await buildPuzzle(place, { terms: KARGE, isPublished: false }));
  await verifyPuzzle({ puzzleId, verify: verifyHere });
  await db().$executeRaw`update puzzle set published_at = clock_timestamp() where id = ${puzzleId}`;
  for (const text of WRONG) tokens.push((await send(slug, text, { name: `Viewer ${tokens.length}` })).token);
  await markAnswers({ puzzleId });
});

test('[T2] the search finds the key where it may stand: in the desk’s own view of the puzzle', async () => {
  const view = await showDeskPuzzle({ showId: place.showId, puzzleId, locale: 'en' });
  expect(formsIn(JSON.stringify(view), FORMS).length).toBeGreaterThan(0);
});

/** A reply as text in which to search: pictures by what they say in words. */
async function wordsOf(reply: Response): Promise<string> {
  const headers = [...reply.headers].map(([name, value]) => `${name}: ${value}`).join('\n');
  const bytes = new Uint8Array(await reply.arrayBuffer());
  const isPicture = reply.headers.get('content-type') === 'image/png';
  return `${headers}\n${isPicture ? pngWords(bytes) : Buffer.from(bytes).toString('utf8')}`;
}

const JSON_ACCEPT: Asked = { headers: { accept: 'application/json' } };
const GERMAN: Asked = { headers: { 'accept-language': 'de' } };

/** Every public address, in both languages, as page and as data. */
async function everythingPublic(): Promise<[string, string][]> {
  const found: [string, string][] = [];
  for (const asked of [{}, GERMAN, JSON_ACCEPT, { headers: { RSC: '1', 'next-router-prefetch': '1' } }]) {
    const replies: [string, Promise<Response>][] = [
      ['/', ask(front, '/', {}, asked)],
      ['puzzle', ask(puzzlePage, `/p/${slug}`, { slug }, asked)],
      ['svg', ask(svg, `/p/${slug}/diagram.svg`, { slug }, asked)],
      ['png', ask(png, `/p/${slug}/diagram.png`, { slug }, asked)],
      ['solution', ask(solution, `/p/${slug}/solution`, { slug }, asked)],
      ['why not', ask(solution, `/p/${slug}/solution?try=f8h6`, { slug }, asked)],
      ['standings', ask(standings, '/standings', {}, asked)],
      ['rules', ask(rules, '/rules', {}, asked)],
      ['404', ask(elsewhere, '/sitemap.xml', { rest: 'sitemap.xml' }, asked)],
      ...tokens.map((token): [string, Promise<Response>] => [
        `receipt ${token}`,
        ask(receipt, `/r/${token}`, { token }, asked),
      ]),
    ];
    for (const [name, reply] of replies)
      found.push([`${name} ${JSON.stringify(asked)}`, await wordsOf(await reply)]);
  }
  for (const text of WRONG) {
    found.push([`read ${text}`, await wordsOf(await ask(read, `/p/${slug}/read`, { slug }, form({ text })))]);
    found.push([
      `read as JSON ${text}`,
      await wordsOf(await ask(read, `/p/${slug}/read`, { slug }, json({ text }))),
    ]);
  }
  return found;
}

describe('[T2] before the reveal the key is found nowhere public', () => {
  test('in no page, reply, picture or receipt, in any form', async () => {
    const found = await everythingPublic();
    expect(found.length).toBeGreaterThan(60);
    const leaks = found.flatMap(([name, text]) => formsIn(text, FORMS).map((one) => `${name}: ${one}`));
    expect(leaks).toEqual([]);
  });

  test('in no script or style sheet that browsers fetch', () => {
    const folder = join(process.cwd(), 'public', 'built');
    const manifest: Record<string, string> = JSON.parse(readFileSync(join(folder, 'manifest.json'), 'utf8'));
    const files = Object.values(manifest).filter((file) => /\.(js|css)$/.test(file));
    expect(files.some((file) => file.startsWith('board.'))).toBe(true);
    const leaks = files.flatMap((file) =>
      formsIn(readFileSync(join(folder, file), 'utf8'), FORMS).map((one) => `${file}: ${one}`),
    );
    expect(leaks).toEqual([]);
  });

  test('and the replies to a right and a wrong answer differ in nothing but what was sent', async () => {
    const right = await send(slug, '1.Qe7', { name: 'Viewer 0' });
    const shape = async (token: string) => {
      const page = await wordsOf(await ask(receipt, `/r/${token}`, { token }));
      return page
        .replaceAll(token, 'TOKEN')
        .replace(/<svg.*?<\/svg>/gs, 'DIAGRAM')
        .replace(/<time[^>]*>[^<]*<\/time>/g, 'TIME')
        .replace(/<blockquote.*?<\/blockquote>/gs, 'TEXT')
        .replace(/<textarea.*?<\/textarea>/gs, 'TEXT')
        .replace(/<ul class="plain">.*?<\/ul>/gs, 'LINES');
    };
    expect(await shape(right.token)).toBe(
      await shape((await send(slug, '1.Qd8', { name: 'Viewer 0' })).token),
    );
  });
});
