// A host publishes a puzzle with a misprint, moves its close, corrects it, takes it out of the count; a viewer
// sends an answer from a page that was open all the while. In a real browser, with the real engine and worker.

import { expect, type Page, test } from '@playwright/test';
import { type RunningApp, startRunningApp } from '../support/running-app.ts';
import { claimDesk } from './support/claim-desk.ts';
import { lookAt } from './support/look-at.ts';
import { quietPage } from './support/quiet-page.ts';

const SIGNED_IN = '.cache/correct-puzzle.json';
const ROOK_A1 = '6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - 0 1';
const ROOK_B1 = '6k1/5ppp/8/8/8/8/5PPP/1R4K1 w - - 0 1';

let app: RunningApp;
let desk = '';
let address = '';

test.describe.configure({ mode: 'serial' });
test.beforeAll(async ({ browser }) => {
  app = await startRunningApp();
  const context = await browser.newContext();
  const page = await context.newPage();
  await claimDesk(page, app.setupLink);
  await context.storageState({ path: SIGNED_IN });
  await publish(page);
  await context.close();
});
test.afterAll(async () => {
  await app?.stop();
});

async function publish(page: Page): Promise<void> {
  await page.goto(`${app.origin}/desk/puzzles/new`);
  await page.getByLabel('Position').fill(ROOK_A1);
  await page.getByLabel('Your solution').fill('Ra8#');
  await page.getByLabel('Moves (for a mate)').fill('1');
  await page.getByLabel('Episode title').fill('A rook too far');
  await page.getByLabel('Opens').fill('2026-01-01T18:00');
  await page.getByLabel('Closes').fill('2126-11-27T18:00');
  await page.getByRole('button', { name: 'Save and verify' }).click();
  await page.getByRole('button', { name: 'Publish' }).click({ timeout: 120_000 });
  await expect(page.getByText('Open', { exact: true })).toBeVisible();
  desk = new URL(page.url()).pathname;
  address = (await page.locator('.secret-link').getAttribute('href')) ?? '';
}

const look = (page: Page, name: string) => lookAt(page, `correct-puzzle/${name}`);

test('the close is moved: an error in words first, then a notice with the viewer’s own time', async ({
  browser,
}) => {
  const { page, problems, close } = await quietPage(browser, {
    storageState: SIGNED_IN,
    timezoneId: 'Asia/Tokyo',
  });
  const found: string[] = [];
  await page.goto(app.origin + desk);
  await page.getByText('Move the close').click();
  await page.getByLabel('New close').fill('2020-01-01T00:00');
  await page.getByRole('button', { name: 'Move it' }).click();
  await expect(page.getByText('It must close after it opens.')).toBeVisible();
  await page.getByLabel('New close').fill('2126-11-28T18:00');
  await page.getByLabel('A word to the viewers').first().fill('One more day, as the episode came late.');
  found.push(...(await look(page, 'desk-move-close')));
  await page.getByRole('button', { name: 'Move it' }).click();
  await expect(page.getByText('The close is moved.')).toBeVisible();
  await page.goto(app.origin + address);
  const notice = page.getByRole('region', { name: 'Correction' });
  await expect(notice).toContainText('The close was moved: formerly');
  await expect(notice).toContainText('One more day, as the episode came late.');
  await expect(notice).toContainText('your time');
  found.push(...(await look(page, 'puzzle-extended')));
  expect([found, problems]).toEqual([[], []]);
  await close();
});

test('[A6] a misprint is corrected by keyboard; a page that stood open keeps its position', async ({
  browser,
}) => {
  const found: string[] = [];
  const viewer = await quietPage(browser, { viewport: { width: 360, height: 740 } });
  await viewer.page.goto(app.origin + address);
  await viewer.page.getByLabel('Your line').fill('Ra8#');
  const { page, problems, close } = await quietPage(browser, {
    storageState: SIGNED_IN,
    colorScheme: 'dark',
  });
  await page.goto(app.origin + desk);
  await page.getByRole('link', { name: 'Correct the puzzle' }).click();
  await page.getByLabel('Position').fill('6k1/5ppp/8/8/8/8/5PPP w - - 0 1');
  await page.getByLabel('A word to the viewers').fill('The rook stands on b1. Sorry!');
  await page.getByRole('button', { name: 'Verify the correction' }).click();
  await expect(page.locator('main').getByRole('alert')).toContainText('FEN');
  await page.getByLabel('Position').fill(ROOK_B1);
  await page.getByLabel('Your solution').fill('Rb8#');
  await page.getByRole('button', { name: 'Look at it' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText('Read as: 1 Rb8#')).toBeVisible();
  found.push(...(await look(page, 'desk-amend-form-dark')));
  await page.getByRole('button', { name: 'Verify the correction' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'What would change' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Put the correction in force' })).toBeVisible({
    timeout: 120_000,
  });
  await expect(page.getByText('True: mate in 1 can be forced.')).toBeVisible();
  found.push(...(await look(page, 'desk-amend-verified-dark')));
  const before = await (await fetch(app.origin + address)).text();
  expect(before, 'nothing of it is public').not.toContain('The rook stands on b1');
  await page.getByRole('button', { name: 'Put the correction in force' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('link', { name: 'Correct the puzzle' })).toBeVisible();
  await page.goto(app.origin + address);
  expect(page.url(), 'the address stays').toBe(app.origin + address);
  await expect(page.getByRole('region', { name: 'Corrections' })).toContainText(
    'The position was corrected.',
  );
  found.push(...(await look(page, 'puzzle-amended-dark')));
  await close();

  await viewer.page.getByRole('button', { name: 'Read it back to me' }).click();
  await expect(viewer.page.getByText('was corrected while you were writing')).toBeVisible();
  await expect(viewer.page.getByRole('heading', { name: 'Is this your line?' })).toBeVisible();
  found.push(...(await look(viewer.page, 'check-stale')));
  await viewer.page.getByRole('button', { name: 'Send' }).click();
  await expect(viewer.page.getByText('the one that your answer is marked on')).toBeVisible();
  found.push(...(await look(viewer.page, 'receipt-former')));
  expect([found, problems, viewer.problems]).toEqual([[], [], []]);
  await viewer.close();
});

test('a false correction cannot take force, and what was typed survives the cancel', async ({ browser }) => {
  const { page, problems, close } = await quietPage(browser, { storageState: SIGNED_IN });
  await page.goto(`${app.origin}${desk}/amend`);
  await page.getByLabel('A word to the viewers').fill('No rook at all.');
  await page.getByLabel('Position').fill('6k1/5ppp/8/8/8/8/5PPP/2B3K1 w - - 0 1');
  await page.getByLabel('Your solution').fill('');
  await page.getByRole('button', { name: 'Verify the correction' }).click();
  await expect(page.getByText('The corrected claim is false')).toBeVisible({ timeout: 120_000 });
  await expect(page.getByRole('button', { name: 'Put the correction in force' })).toHaveCount(0);
  const found = await look(page, 'desk-amend-false');
  await page.getByRole('button', { name: 'Cancel the correction' }).click();
  await expect(page.getByText('filled in with your last correction')).toBeVisible();
  await expect(page.getByLabel('A word to the viewers')).toHaveValue('No rook at all.');
  expect([found, problems]).toEqual([[], []]);
  await close();
});

test('the forms of correction work without scripts, and a void puzzle says why', async ({ browser }) => {
  const { page, close } = await quietPage(browser, { storageState: SIGNED_IN, javaScriptEnabled: false });
  await page.goto(`${app.origin}${desk}/amend`);
  await page.getByLabel('A word to the viewers').fill(' ');
  await page.getByRole('button', { name: 'Look at it' }).click();
  await expect(page.locator('.plate svg')).toBeVisible();
  await page.goto(app.origin + desk);
  await page.getByText('Take the puzzle out of the count').click();
  await page.locator('#void-note').fill('Two pawns were lost in print.');
  await page.getByRole('button', { name: 'Declare it void' }).click();
  await expect(page.getByText('Void', { exact: true })).toBeVisible();
  await close();
  const viewer = await quietPage(browser, { colorScheme: 'dark' });
  await viewer.page.goto(`${app.origin}${address}?lang=de`);
  await expect(viewer.page.getByText('Die Aufgabe wurde aus der Wertung genommen.')).toBeVisible();
  await expect(viewer.page.getByText('danke fürs Lösen')).toBeVisible();
  const found = await look(viewer.page, 'puzzle-void-de-dark');
  expect([found, viewer.problems]).toEqual([[], []]);
  await viewer.close();
});

test('[A7] without a sign-in nothing of a correction is shown', async () => {
  for (const headers of [{}, { RSC: '1' }, { cookie: 'tailpiece.desk=forged' }]) {
    const reply = await fetch(`${app.origin}${desk}/amend`, { headers, redirect: 'manual' });
    expect([200, 303, 307]).toContain(reply.status);
    expect(await reply.text()).not.toMatch(/Correct the puzzle|No rook at all/);
  }
});
