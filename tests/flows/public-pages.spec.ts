// Every public page in a real browser: accessible in both modes, usable by keys alone and without scripts, narrow,
// printed, within its budgets; and silent about the solution until the reveal.

import { mkdirSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { type Browser, expect, type Page, test } from '@playwright/test';
import { formsIn, moveForms, pngWords } from '../support/move-forms.ts';
import { positionOf } from '../support/positions.ts';
import type { RunningApp } from '../support/running-app.ts';
import { openBoard, openSlug } from './support/board-page.ts';
import { claimDesk } from './support/claim-desk.ts';
import { lookAt, lookAtBoth } from './support/look-at.ts';
import { quietPage } from './support/quiet-page.ts';
import { startSampleApp } from './support/sample-app.ts';

const HEALEY = '8/1n3Np1/1N4Q1/1bkP4/p1p2p2/P1P2R2/3P2PK/B2R4 w - - 0 1';
const PICTURES = '.artifacts/public-pages';

let app: RunningApp;
let slug = '';
let revealed = '';

test.beforeAll(async () => {
  mkdirSync(PICTURES, { recursive: true });
  app = await startSampleApp();
  const reply = await fetch(app.origin, { headers: { accept: 'application/json' } });
  const front: { past: { slug: string }[] } = await reply.json();
  revealed = front.past[0]?.slug ?? '';
  slug = await openSlug(app.origin);
});
test.afterAll(async () => {
  await app?.stop();
});

const onPhone = (browser: Browser, options: Parameters<Browser['newContext']>[0] = {}) =>
  quietPage(browser, { viewport: { width: 360, height: 740 }, ...options });

const field = (page: Page) => page.getByLabel('Your line, in any notation or language');

async function sendLine(page: Page, text: string, name: string): Promise<string> {
  await page.goto(`${app.origin}/p/${slug}`);
  await field(page).fill(text);
  await page.getByRole('button', { name: 'Read it back to me' }).click();
  await page.getByLabel('Your name, if it may be read out').fill(name);
  await page.getByRole('button', { name: 'Send it' }).click();
  await page.waitForURL(/\/r\//);
  return page.url();
}

for (const [mode, options] of [
  ['light', { colorScheme: 'light' }],
  ['dark', { colorScheme: 'dark' }],
  ['forced colours', { forcedColors: 'active' }],
] as const) {
  test(`axe finds nothing on any public page: ${mode}`, async ({ browser }) => {
    const { page, problems, close } = await onPhone(browser, options);
    const found: string[] = [];
    const look = async (name: string): Promise<void> => {
      found.push(...(await lookAt(page, `public-pages/${name}-${mode.replace(' ', '-')}`)));
    };
    for (const [name, path] of [
      ['front', '/'],
      ['puzzle', `/p/${slug}`],
      ['puzzle-german', `/p/${slug}?lang=de`],
      ['solution', `/p/${revealed}/solution`],
      ['solution-step', `/p/${revealed}/solution?line=0&ply=1`],
      ['standings', '/standings'],
      ['rules', '/rules'],
    ] as const) {
      await page.goto(app.origin + path);
      await look(name);
    }
    await page.goto(`${app.origin}/p/${slug}`);
    await field(page).fill('Rh2 and then Rxh6 or so');
    await page.getByRole('button', { name: 'Read it back to me' }).click();
    await look('check');
    await page.getByRole('button', { name: 'Send it' }).click();
    await page.waitForURL(/\/r\//);
    await look('receipt');
    expect(found).toEqual([]);
    expect(problems).toEqual([]);
    await page.goto(`${app.origin}/nothing-here`);
    await look('not-found');
    expect(found).toEqual([]);
    await close();
  });
}

test('a mate in three is entered by keys alone: named cells, a live voice, thirty strokes at most', async ({
  browser,
}) => {
  const { page, problems, close } = await onPhone(browser);
  await openBoard(page, app.origin, HEALEY);
  let strokes = 0;
  const press = async (...keys: string[]): Promise<void> => {
    for (const key of keys) {
      await page.keyboard.press(key);
      strokes += 1;
    }
  };
  const cell = (name: string) => page.getByRole('gridcell', { name, exact: true });
  await expect(page.locator('.board-cell[tabindex="0"]')).toHaveCount(1);
  await press('Tab');
  await expect(cell('a1, white bishop')).toBeFocused();
  await press('End', 'ArrowLeft', 'ArrowLeft', 'ArrowLeft', 'ArrowLeft', 'Enter');
  await expect(cell('d1, white rook')).toHaveAttribute('aria-selected', 'true');
  await expect(page.locator('[aria-live]').first()).toContainText('white rook on d1 chosen');
  await press('End', 'Enter');
  await expect(cell('h1, white rook')).toBeFocused();
  await expect(page.getByLabel('Line')).toHaveValue('1. Rh1');
  await page.keyboard.press('Escape');
  // Ctrl+Home is the corner above left; the bishop stands on b5.
  await press('Control+Home', 'ArrowRight', 'ArrowDown', 'ArrowDown', 'ArrowDown', 'Enter');
  await press('ArrowUp', 'ArrowUp', 'ArrowRight', 'ArrowRight', 'Enter');
  await expect(page.getByLabel('Line')).toHaveValue('1. Rh1 Bd7');
  expect(strokes).toBeLessThanOrEqual(30);
  await page.getByRole('button', { name: 'Take back' }).click();
  await expect(page.getByLabel('Line')).toHaveValue('1. Rh1');
  expect(problems).toEqual([]);
  await close();
});

test('the board takes taps, drags and promotions, lets go on Escape, and turns', async ({ browser }) => {
  const { page, problems, close } = await onPhone(browser);
  await openBoard(page, app.origin, '3k4/P7/8/8/8/8/8/R3K2R w KQ - 0 1');
  const square = (name: string) => page.locator(`[data-square="${name}"]`);
  const line = page.getByLabel('Line');
  await square('a7').click();
  await square('a8').click();
  await page.getByRole('group', { name: 'Promote to' }).getByRole('button', { name: 'Knight' }).click();
  await expect(line).toHaveValue('1. a8=N');
  await square('d8').dragTo(square('e7'));
  await expect(line).toHaveValue('1. a8=N Ke7');
  await square('e1').dragTo(square('c1'));
  await expect(line).toHaveValue('1. a8=N Ke7 2. O-O-O');
  // A drag that ends where nothing can go changes nothing; nor does one called off.
  await square('e7').dragTo(square('a1'));
  await square('e7').hover();
  await page.mouse.down();
  await square('e6').hover();
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect(line).toHaveValue('1. a8=N Ke7 2. O-O-O');
  await page.getByRole('button', { name: 'Turn the board' }).click();
  const above = await square('a1').boundingBox();
  const below = await square('a8').boundingBox();
  expect(above && below && above.y < below.y).toBe(true);
  expect(above?.width ?? 0).toBeGreaterThanOrEqual(40);
  expect(above?.height ?? 0).toBeGreaterThanOrEqual(40);
  expect(problems).toEqual([]);
  await close();
});

test('what is typed in any notation is followed on the board after a pause', async ({ browser }) => {
  const { page, problems, close } = await onPhone(browser);
  await page.goto(`${app.origin}/p/${slug}`);
  await field(page).fill('Turm h1 nach h2');
  await expect(page.locator('#so-far')).toContainText('Rh1–h2');
  await expect(page.getByRole('gridcell', { name: 'h2, white rook', exact: true })).toBeVisible();
  expect(problems).toEqual([]);
  await close();
});

test('without scripts: read back, choose, send, change and withdraw', async ({ browser }) => {
  const { page, close } = await onPhone(browser, { javaScriptEnabled: false });
  const receipt = await sendLine(page, 'Rh2', 'Typist');
  await expect(page.getByRole('heading', { name: 'Your answer is in' })).toBeVisible();
  await page.getByText('Change the answer', { exact: true }).click();
  await field(page).fill('Rh3');
  await page.getByRole('button', { name: 'Read it back to me' }).click();
  await page.getByRole('button', { name: 'Send it' }).click();
  await expect(page.locator('.quote')).toHaveText('Rh3');
  await page.goto(receipt);
  await page.getByText('Withdraw the answer', { exact: true }).click();
  await page.getByRole('button', { name: 'Withdraw it now' }).click();
  await expect(page.getByRole('heading', { name: 'Withdrawn' })).toBeVisible();
  await expect(page.locator('main')).not.toContainText(/Typist|Rh2|Rh3/);
  await close();
});

test('after the reveal the solution is played by links, with and without scripts, and asked why not', async ({
  browser,
}) => {
  for (const javaScriptEnabled of [true, false]) {
    const { page, problems, close } = await onPhone(browser, { javaScriptEnabled });
    await page.goto(`${app.origin}/p/${revealed}/solution`);
    await page.locator('#lines a').nth(1).click();
    await expect(page).toHaveURL(/line=0&ply=2/);
    await page.getByLabel(/Tap any move/).selectOption({ index: 0 });
    await page.getByRole('button', { name: 'Why not?' }).click();
    await expect(page.locator('#why-not .lead')).not.toBeEmpty();
    expect(problems).toEqual([]);
    await close();
  }
});

test('at 320 px, and with text twice as large, nothing scrolls sideways', async ({ browser }) => {
  const { page, close } = await onPhone(browser, { viewport: { width: 320, height: 640 } });
  for (const path of ['/', `/p/${slug}`, `/p/${revealed}/solution`, '/standings', '/rules', '/nothing']) {
    await page.goto(app.origin + path);
    const excess = () => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(await excess(), path).toBeLessThanOrEqual(0);
    await page.setViewportSize({ width: 640, height: 640 });
    await page.evaluate(() => document.documentElement.style.setProperty('font-size', '212%'));
    expect(await excess(), `${path} at 200 % text`).toBeLessThanOrEqual(0);
    await page.setViewportSize({ width: 320, height: 640 });
  }
  await close();
});

test('the puzzle prints on one page, ink on paper also from dark mode', async ({ browser }) => {
  const { page, close } = await onPhone(browser, { colorScheme: 'dark' });
  await page.goto(`${app.origin}/p/${slug}`);
  const pdf = (await page.pdf({ format: 'A4' })).toString('latin1');
  expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(1);
  await page.emulateMedia({ media: 'print' });
  expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe(
    'rgb(255, 255, 255)',
  );
  await page.screenshot({ path: `${PICTURES}/puzzle-print.png`, fullPage: true });
  await close();
});

test('budgets: scripts 25 kB, HTML 14 kB, style sheet 10 kB, all zipped; files kept for a year', async () => {
  const html = await (await fetch(`${app.origin}/p/${slug}`)).text();
  const zipped = (content: string): number => gzipSync(content, { level: 9 }).byteLength;
  const fetched = async (pattern: RegExp): Promise<Response> => {
    const path = pattern.exec(html)?.[1];
    expect(path).toBeDefined();
    return fetch(`${app.origin}${path}`);
  };
  const script = await fetched(/src="(\/built\/[^"]+\.js)"/);
  const style = await fetched(/href="(\/built\/[^"]+\.css)"/);
  expect(script.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
  const sizes = {
    script: zipped(await script.text()),
    style: zipped(await style.text()),
    html: zipped(html),
  };
  console.log(`bytes zipped: ${JSON.stringify(sizes)}`);
  expect(html.match(/<script/g)).toHaveLength(1);
  expect(sizes.script).toBeLessThanOrEqual(25_000);
  expect(sizes.style).toBeLessThanOrEqual(10_000);
  expect(sizes.html).toBeLessThanOrEqual(14_000);
});

// The last one: it closes and reveals the puzzle that the others answer.
test('[T2] the key of the open puzzle stands on the desk, and nowhere that the public can fetch', async ({
  browser,
}) => {
  const { page: desk, close } = await onPhone(browser, { viewport: { width: 1280, height: 800 } });
  const puzzle: { fen: string } = await (
    await fetch(`${app.origin}/p/${slug}`, { headers: { accept: 'application/json' } })
  ).json();
  const forms = moveForms(positionOf(puzzle.fen), 'h1f1');
  const { page: loser, problems, close: closeLoser } = await onPhone(browser);
  const receipt = await sendLine(loser, 'Rh2', 'A loser');
  await claimDesk(desk, app.setupLink);
  await desk.getByRole('link', { name: 'Into the corner' }).first().click();
  await desk.waitForURL(/\/desk\/puzzles\/\d+/);
  expect(formsIn(await desk.content(), forms), 'the search must find the key on the desk').not.toEqual([]);

  const found: string[] = [];
  const built = new Set<string>();
  const search = async (path: string, headers: Record<string, string> = {}): Promise<void> => {
    const reply = await fetch(app.origin + path, { headers });
    const bytes = new Uint8Array(await reply.arrayBuffer());
    const isPng = reply.headers.get('content-type') === 'image/png';
    const text = `${JSON.stringify([...reply.headers])}${isPng ? pngWords(bytes) : Buffer.from(bytes).toString('utf8')}`;
    for (const address of text.matchAll(/\/built\/[\w.-]+\.(?:js|css)/g)) built.add(address[0]);
    found.push(...formsIn(text, forms).map((form) => `${path}: ${form}`));
  };
  const paths = [
    '/',
    `/p/${slug}`,
    `/p/${slug}/diagram.svg`,
    `/p/${slug}/diagram.png`,
    `/p/${slug}/solution`,
  ];
  paths.push(`/p/${slug}/solution?try=h1h6`, '/standings', '/rules', '/nothing', '/sitemap.xml', '/icon.svg');
  for (const path of paths) {
    await search(path);
    await search(path, { accept: 'application/json' });
    await search(path, { RSC: '1', 'next-router-prefetch': '1', 'accept-language': 'de' });
  }
  for (const path of built) {
    await search(path);
    await search(`${path}.map`);
  }
  expect(built.size).toBeGreaterThan(1);
  expect(found).toEqual([]);

  // The same receipt after the reveal: now it explains, and it is as accessible as before.
  await desk.getByRole('button', { name: 'Close now' }).click();
  await desk.getByRole('button', { name: 'Reveal the solution' }).click();
  await expect(desk.getByText('Revealed').first()).toBeVisible();
  await expect(async () => {
    await loser.goto(receipt);
    await expect(loser.getByRole('heading', { name: 'Wrong first move' })).toBeVisible({ timeout: 1000 });
  }).toPass({ timeout: 60_000 });
  expect(await lookAtBoth(loser, 'public-pages/receipt-revealed')).toEqual([]);
  expect(problems).toEqual([]);
  await closeLoser();
  await close();
});
