// Every page of the desk in a real browser: accessible in both modes and at both widths, closed to
// everybody who is not signed in, and its forms at work without scripts.

import { randomBytes } from 'node:crypto';
import { type Browser, expect, type Page, test } from '@playwright/test';
import type { RunningApp } from '../support/running-app.ts';
import { claimDesk } from './support/claim-desk.ts';
import { lookAt, violationsOn } from './support/look-at.ts';
import { quietPage } from './support/quiet-page.ts';
import { startSampleApp } from './support/sample-app.ts';

const SIGNED_IN = '.cache/desk-pages.json';

let app: RunningApp;
let places: Record<string, string> = {};

test.describe.configure({ mode: 'serial' });
test.beforeAll(async ({ browser }) => {
  app = await startSampleApp();
  const context = await browser.newContext();
  const page = await context.newPage();
  await claimDesk(page, app.setupLink);
  await context.storageState({ path: SIGNED_IN });
  places = await findPlaces(page);
  await context.close();
});
test.afterAll(async () => {
  await app?.stop();
});

/** Addresses of every page, those of a puzzle with answers among them. */
async function findPlaces(page: Page): Promise<Record<string, string>> {
  await page.goto(`${app.origin}/desk`);
  const line = page.getByRole('listitem').filter({ hasText: 'Revealed' }).first();
  const puzzle = (await line.getByRole('link').getAttribute('href')) ?? '';
  await page.goto(`${app.origin}${puzzle}/answers`);
  const answer = (await page.locator('table a').first().getAttribute('href')) ?? '';
  return {
    episodes: '/desk',
    'new-puzzle': '/desk/puzzles/new',
    puzzle,
    comments: `${puzzle}/comments`,
    doubtful: `${puzzle}/doubtful`,
    question: await askSomething(page),
    sheet: `${puzzle}/sheet`,
    answers: `${puzzle}/answers`,
    amend: `${puzzle}/amend`,
    regrade: `${puzzle}/regrade`,
    answer,
    log: '/desk/log',
    members: '/desk/members',
    schemes: '/desk/schemes',
  };
}

/** A doubtful answer to the open puzzle; gives the address of its list. */
async function askSomething(page: Page): Promise<string> {
  await page.goto(`${app.origin}/desk`);
  await page
    .getByRole('listitem')
    .filter({ hasText: /Open until/ })
    .getByRole('link')
    .click();
  await expect(page.locator('.secret-link')).toBeVisible();
  const open = new URL(page.url()).pathname;
  const address = await page.locator('.secret-link').getAttribute('href');
  const key = randomBytes(16).toString('base64url');
  const sent = await fetch(`${app.origin}${address}/answer`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', accept: 'application/json' },
    body: JSON.stringify({ text: 'Nxx5+ I would say', name: 'Somebody', key }),
  });
  expect(sent.status).toBe(201);
  await expect(async () => {
    await page.goto(`${app.origin}${open}/doubtful`);
    await expect(page.getByRole('heading', { name: /What is/ })).toBeVisible({ timeout: 2000 });
  }).toPass({ timeout: 60_000 });
  return `${open}/doubtful`;
}

const signedIn = (browser: Browser, options: Parameters<Browser['newContext']>[0] = {}) =>
  quietPage(browser, { storageState: SIGNED_IN, ...options });

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing on any page of the desk: ${colorScheme}`, async ({ browser }) => {
    const { page, problems, close } = await signedIn(browser, { colorScheme });
    const found: string[] = [];
    for (const [name, place] of Object.entries(places)) {
      await page.goto(app.origin + place);
      found.push(...(await lookAt(page, `desk-pages/${name}-${colorScheme}`)));
    }
    expect(found).toEqual([]);
    expect(problems).toEqual([]);
    await close();
  });
}

test('axe finds nothing on sign-in and first start', async ({ browser }) => {
  const { page, problems, close } = await signedIn(browser, { storageState: { cookies: [], origins: [] } });
  for (const name of ['sign-in', 'setup']) {
    await page.goto(`${app.origin}/desk/${name}`);
    expect(await violationsOn(page)).toEqual([]);
  }
  expect(problems).toEqual([]);
  await close();
});

test('[A7] without a sign-in every page leads to the sign-in and shows nothing of the desk', async () => {
  const headers = [
    {},
    { 'x-middleware-subrequest': 'proxy:proxy:proxy:proxy:proxy' },
    { RSC: '1', 'Next-Router-Prefetch': '1' },
    { 'x-nextjs-data': '1' },
    { cookie: 'tailpiece.desk=forged' },
  ];
  for (const place of [...Object.values(places), `${places.puzzle}/progress`, `${places.regrade}/progress`]) {
    for (const header of headers) {
      const reply = await fetch(app.origin + place, { headers: header, redirect: 'manual' });
      const body = await reply.text();
      expect([200, 307, 303, 401, 404], `${place} ${JSON.stringify(header)}`).toContain(reply.status);
      expect(body, place).not.toMatch(
        /Soundness report|Take the rights|Read-out sheet|verdicts in the book|Log only|Mark everybody again/,
      );
      if (reply.status === 200) expect(body).toContain('sign-in');
    }
  }
});

test('[A12] actions and sign-out from a foreign page, or from none, change nothing', async () => {
  for (const origin of ['https://evil.example', 'null', undefined]) {
    const headers = {
      'content-type': 'text/plain',
      'next-action': '0'.repeat(42),
      ...(origin === undefined ? {} : { origin }),
    };
    const reply = await fetch(`${app.origin}/desk/members`, { method: 'POST', headers, body: '[]' });
    expect(reply.status).toBe(403);
  }
  const publicAction = await fetch(`${app.origin}/`, {
    method: 'POST',
    headers: { 'next-action': 'x' },
    body: '[]',
  });
  expect(publicAction.status).toBe(404);
});

test('[A17] each desk page has a nonce of its own and no inline permission', async () => {
  const policies = await Promise.all(
    Array.from({ length: 20 }, async () => {
      const reply = await fetch(`${app.origin}/desk/setup`, {
        headers: { 'content-security-policy': "script-src 'unsafe-inline'" },
      });
      return reply.headers.get('content-security-policy') ?? '';
    }),
  );
  expect(new Set(policies).size).toBe(20);
  for (const policy of policies) expect(policy).not.toMatch(/unsafe-inline|unsafe-eval/);
});

test('[A13] sign-in leads back to the desk alone', async ({ browser }) => {
  const { page, close } = await signedIn(browser, { storageState: { cookies: [], origins: [] } });
  for (const aim of ['https://evil.example/x', '//evil.example', '/p/x', 'javascript:alert(1)']) {
    await page.context().clearCookies();
    await page.goto(`${app.origin}/api/auth/signin?callbackUrl=${encodeURIComponent(aim)}`);
    await page.getByLabel('Sign-in name').fill('host');
    await page.getByLabel('Password').fill('a bishop on the long diagonal');
    await page.getByRole('button', { name: 'Sign in to the desk' }).click();
    await expect(page.getByRole('heading', { name: 'Episodes' })).toBeVisible();
    expect(new URL(page.url()).pathname).toBe('/desk');
  }
  await close();
});

test('the forms of the desk work without scripts', async ({ browser }) => {
  const { page, close } = await signedIn(browser, { javaScriptEnabled: false });
  await page.goto(`${app.origin}/desk/puzzles/new`);
  await page.getByLabel('Position').fill('6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - 0 1');
  await page.getByLabel('Your solution').fill('Ta8 matt');
  await page.getByRole('button', { name: 'Look at it' }).click();
  await expect(page.getByText('Read as: 1 Ra8#')).toBeVisible();
  await page.getByLabel('Moves (for a mate)').fill('1');
  await page.getByLabel('Episode title').fill('Without scripts');
  await page.getByRole('button', { name: 'Save and verify' }).click();
  await expect(page.getByRole('heading', { name: 'White to play and mate in one' })).toBeVisible();
  await page.getByRole('link', { name: 'Change the puzzle' }).click();
  await expect(page.getByLabel('Your solution')).toHaveValue('Ta8 matt');
  await page.getByText('More terms').click();
  await page.getByLabel('The mating move must be written').check();
  await page.getByLabel('Moves (for a mate)').fill('2');
  await page.getByRole('button', { name: 'Save and verify' }).click();
  await expect(page.getByRole('heading', { name: 'White to play and mate in two' })).toBeVisible();
  await page.getByRole('link', { name: 'Change the puzzle' }).click();
  await page.getByText('More terms').click();
  await expect(page.getByLabel('The mating move must be written')).toBeChecked();
  await page.goto(`${app.origin}/desk/schemes`);
  const full = page.getByRole('region', { name: /Full line/ });
  await full.getByLabel('Mates, but later').fill('6');
  await full.getByRole('button', { name: 'Save as a new version' }).click();
  await expect(page.getByText('A later mate cannot earn more')).toBeVisible();
  await full.getByLabel('Mates, but later').fill('3');
  await full.getByRole('button', { name: 'Save as a new version' }).click();
  await expect(page.getByText('Version 2 holds for puzzles set from now on.')).toBeVisible();
  await page.goto(`${app.origin}/desk/members`);
  await page.getByLabel('Sign-in name').fill('tom');
  await page.getByLabel('First password').fill('lanterns at low tide');
  await page.getByRole('button', { name: 'Let a helper in' }).click();
  await expect(page.getByText('tom', { exact: true })).toBeVisible();
  await close();
});

test('[A3] one key settles a doubtful answer, the switch turns keys off, and the word can be taken back', async ({
  browser,
}) => {
  const { page, problems, close } = await signedIn(browser);
  await page.goto(app.origin + places.question);
  const title = page.getByRole('heading', { level: 1 });
  await expect(title).toContainText('What is');
  await page.getByRole('checkbox').uncheck();
  await page.getByRole('group', { name: 'Ways to settle it' }).focus();
  await page.keyboard.press('2');
  await expect(title).toContainText('What is');
  await page.getByRole('checkbox').check();
  await page.getByRole('group', { name: 'Ways to settle it' }).focus();
  await page.keyboard.press('2');
  await expect(title).toContainText('Nothing is doubtful');
  await page.getByRole('button', { name: 'Take it back' }).click();
  await page.waitForURL((url) => !url.searchParams.has('settled'));
  await expect(async () => {
    await page.reload();
    await expect(title).toContainText('What is', { timeout: 2000 });
  }).toPass({ timeout: 60_000 });
  expect(problems).toEqual([]);
  await close();
});

test('[A11] signing out ends the session in this browser', async ({ browser }) => {
  const { page, close } = await signedIn(browser);
  await page.goto(`${app.origin}/desk`);
  await page.getByRole('button', { name: /Sign out/ }).click();
  await expect(page.getByRole('button', { name: 'Sign in to the desk' })).toBeVisible();
  await page.goto(`${app.origin}/desk/log`);
  expect(page.url()).toContain('/desk/sign-in');
  await close();
});
