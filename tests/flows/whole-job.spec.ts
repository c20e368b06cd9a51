// The whole job in a real browser: set, verify, publish, collect, mark, settle, close, read out,
// reveal, standings. The puzzle is Healey's mate in three of 1861 (published; key 1.Rh1).

import { mkdirSync } from 'node:fs';
import { type Browser, expect, type Page, test } from '@playwright/test';
import { type RunningApp, startRunningApp } from '../support/running-app.ts';
import { failOnConsole } from './support/fail-on-console.ts';

const HEALEY = '8/1n3Np1/1N4Q1/1bkP4/p1p2p2/P1P2R2/3P2PK/B2R4 w - - 0 1';
const PASSWORD = 'a bishop on the long diagonal';
const PICTURES = '.artifacts/whole-job';
const COMMENTS = `Ilse Varga
Rook to h1!! If the bishop goes to d7 the queen drops back to b1.

Board Backwards
Ra8 Be2 Qg8

Old Friend
What a lovely episode, thank you.

Quick Queen
1 Qb1 Nd8`;

let app: RunningApp;
test.beforeAll(async () => {
  mkdirSync(PICTURES, { recursive: true });
  app = await startRunningApp();
});
test.afterAll(async () => {
  await app?.stop();
});

/** The page as a phone and a laptop show it, kept in an ignored folder. */
async function picture(page: Page, name: string): Promise<void> {
  const before = page.viewportSize();
  for (const width of [360, 1280]) {
    await page.setViewportSize({ width, height: width === 360 ? 740 : 800 });
    await page.screenshot({ path: `${PICTURES}/${name}-${width}.png`, fullPage: true });
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(overflow, `${name} at ${width} px scrolls sideways`).toBeLessThanOrEqual(0);
  }
  if (before) await page.setViewportSize(before);
}

/** A viewer with a browser of their own, so that cookies are not shared. */
async function viewer(browser: Browser, options: { javaScriptEnabled?: boolean } = {}): Promise<Page> {
  const context = await browser.newContext({
    ...options,
    viewport: { width: 360, height: 740 },
    locale: 'en-GB',
  });
  const page = await context.newPage();
  failOnConsole(page);
  return page;
}

/** `datetime-local` text in UTC, so many minutes from now. */
function inMinutes(minutes: number): string {
  return new Date(Date.now() + minutes * 60_000).toISOString().slice(0, 16);
}

async function signIn(desk: Page): Promise<void> {
  await desk.goto(app.setupLink);
  await desk.getByLabel('Name of the show').fill('The Lamplight Board');
  await desk.getByLabel('Time zone').selectOption('UTC');
  await desk.getByLabel('Sign-in name').fill('host');
  await desk.getByLabel('Password').fill(PASSWORD);
  await desk.getByRole('button', { name: 'Take the desk' }).click();
  await expect(desk.getByText('The show is yours.')).toBeVisible();
  await desk.getByLabel('Sign-in name').fill('host');
  await desk.getByLabel('Password').fill(PASSWORD);
  await desk.getByRole('button', { name: 'Sign in to the desk' }).click();
  await expect(desk.getByRole('link', { name: 'New puzzle' })).toBeVisible();
}

async function setPuzzle(desk: Page): Promise<void> {
  await desk.getByRole('link', { name: 'New puzzle' }).click();
  await desk.getByLabel('Position', { exact: true }).fill(HEALEY);
  await desk.getByLabel('Your solution').fill('1.Th1 Ld7 2.Db1');
  await desk.getByRole('button', { name: 'Look at it' }).click();
  await expect(desk.getByText('Read as:')).toBeVisible();
  await picture(desk, 'desk-new-puzzle');
  await desk.getByLabel('Moves (for a mate)').fill('3');
  await desk.getByLabel('Episode number').fill('42');
  await desk.getByLabel('Episode title').fill('The quiet rook');
  await desk.getByLabel('Opens').fill(inMinutes(-60));
  await desk.getByLabel('Closes').fill(inMinutes(120));
  await desk.locator('#zone').selectOption('UTC');
  await desk.getByRole('button', { name: 'Save and verify' }).click();
  await desk.waitForURL(/\/desk\/puzzles\/\d+/);
}

/** Taps the men: solver and defender alternate, as on a table. */
async function tapLine(page: Page, line: readonly string[]): Promise<void> {
  for (const move of line) {
    for (const square of [move.slice(0, 2), move.slice(2, 4)]) {
      await page.getByRole('gridcell', { name: new RegExp(`^${square}\\b`) }).click();
    }
  }
}

async function sendChecked(page: Page, name: string): Promise<string> {
  await page.getByLabel('Your name, if it may be read out').fill(name);
  await page.getByRole('button', { name: 'Send it' }).click();
  await page.waitForURL(/\/r\//);
  await expect(page.getByRole('heading', { name: 'Your answer is in' })).toBeVisible();
  return page.url();
}

test('a host sets, publishes, collects, settles, reads out and reveals; viewers answer in their own ways', async ({
  browser,
}) => {
  const desk = await (
    await browser.newContext({ locale: 'en-GB', viewport: { width: 1280, height: 800 } })
  ).newPage();
  failOnConsole(desk);
  await signIn(desk);
  await setPuzzle(desk);
  const puzzleAddress = desk.url().replace(/[?#].*$/, '');

  // The worker verifies while the host watches; the report then says what it found.
  await expect(desk.getByRole('button', { name: 'Publish' })).toBeEnabled({ timeout: 120_000 });
  await expect(desk.getByText(/Rh1/).first()).toBeVisible();
  await picture(desk, 'desk-soundness');
  await desk.getByRole('button', { name: 'Publish' }).click();
  await expect(desk.getByText('For the episode')).toBeVisible();
  await picture(desk, 'desk-published');

  const shownLink = await desk.locator('main a[href*="/p/"]').first().getAttribute('href');
  const slug = /\/p\/([\w-]+)/.exec(shownLink ?? '')?.[1] ?? '';
  expect(slug).not.toBe('');
  const address = `${app.origin}/p/${slug}`;

  // A viewer who taps the board.
  const tapper = await viewer(browser);
  await tapper.goto(address);
  await picture(tapper, 'puzzle-page');
  await tapLine(tapper, ['d1h1', 'b5d7', 'g6b1']);
  await picture(tapper, 'puzzle-page-line');
  await tapper.getByRole('button', { name: 'Read it back to me' }).click();
  await expect(tapper.getByRole('heading', { name: 'Is this your line?' })).toBeVisible();
  await picture(tapper, 'check-page');
  const solverReceipt = await sendChecked(tapper, 'Tomasz B.');
  await picture(tapper, 'receipt-before');

  // A viewer without scripts, in German letters.
  const typist = await viewer(browser, { javaScriptEnabled: false });
  await typist.goto(address);
  await typist
    .getByLabel('Your line, in any notation or language')
    .fill('Th1! und falls Ld7, dann Db1 mit Matt');
  await typist.getByRole('button', { name: 'Read it back to me' }).click();
  await expect(typist.getByRole('heading', { name: 'Is this your line?' })).toBeVisible();
  await sendChecked(typist, 'Zoë Lindqvist');

  // A viewer who is wrong, and is told nothing before the reveal.
  const loser = await viewer(browser);
  await loser.goto(address);
  await loser.getByLabel('Your line, in any notation or language').fill('1. Qb1 Bd7 2. Qb4+');
  await loser.getByRole('button', { name: 'Read it back to me' }).click();
  const loserReceipt = await sendChecked(loser, 'quiet_move');
  await expect(loser.locator('main')).not.toContainText(/Kxb6|Wrong first move|slips/);

  // Comments join: looked at first, stored once.
  await desk.goto(`${puzzleAddress}/comments`);
  await desk.getByLabel('Paste comments').fill(COMMENTS);
  await desk.getByLabel('were written before the close').check();
  await desk.getByRole('button', { name: 'Look at them' }).click();
  await expect(desk.getByText('Ilse Varga', { exact: true })).toBeVisible();
  await picture(desk, 'desk-comments');
  await desk.getByRole('button', { name: 'Take them in' }).click();
  await expect(desk.getByText('Kept. They are being taken in')).toBeVisible();
  await expect(async () => {
    await desk.goto(`${puzzleAddress}/comments`);
    await expect(desk.getByText(/4 new, 0 known/)).toBeVisible({ timeout: 1000 });
  }).toPass({ timeout: 60_000 });

  // Closed by hand; then the one doubtful group is settled with one key.
  await desk.goto(puzzleAddress);
  await desk.getByRole('button', { name: 'Close now' }).click();
  await expect(desk.getByRole('button', { name: 'Reveal the solution' })).toBeVisible();
  await expect(async () => {
    await desk.goto(puzzleAddress);
    await expect(desk.getByText('All answers are marked.')).toBeVisible({ timeout: 1000 });
  }).toPass({ timeout: 60_000 });
  await desk.goto(`${puzzleAddress}/doubtful`);
  await expect(desk.getByRole('heading', { name: 'Board turned round?' })).toBeVisible();
  await picture(desk, 'desk-doubtful');
  await desk.locator('.key-list').focus();
  await desk.keyboard.press('1');
  await expect(desk.getByText('Settled. The answers are marked again.')).toBeVisible();
  await expect(async () => {
    await desk.goto(`${puzzleAddress}/doubtful`);
    await expect(desk.getByText('Nothing is doubtful')).toBeVisible({ timeout: 1000 });
  }).toPass({ timeout: 60_000 });

  // The sheet says what is to be said, in the order of the air.
  await expect(async () => {
    await desk.goto(`${puzzleAddress}/sheet`);
    await expect(desk.locator('.readout')).toContainText(/rook .*h1/i, { timeout: 1000 });
  }).toPass({ timeout: 30_000 });
  const labels = await desk.locator('.readout dt').allInnerTexts();
  expect(labels.map((label) => label.toLowerCase())).toEqual([
    'recall',
    'answer',
    'how you did',
    'the trap',
    'names',
  ]);
  await expect(desk.locator('.readout')).toContainText('Tomasz B.');
  await expect(desk.locator('.readout')).toContainText('Zoë Lindqvist');
  await expect(desk.locator('.readout')).toContainText('Ilse Varga');
  await expect(desk.locator('.readout')).toContainText(/queen to b1/i);
  await expect(desk.locator('.readout')).not.toContainText('quiet_move');
  await picture(desk, 'read-out-sheet');

  // Before the reveal the loser's receipt is silent; after it, it explains.
  await desk.goto(puzzleAddress);
  await desk.getByRole('button', { name: 'Reveal the solution' }).click();
  await expect(desk.getByText('Revealed').first()).toBeVisible();
  await loser.goto(loserReceipt);
  await expect(loser.getByRole('heading', { name: 'Wrong first move' })).toBeVisible();
  await expect(loser.locator('main')).toContainText('Kxb6');
  await picture(loser, 'receipt-wrong');
  await tapper.goto(solverReceipt);
  await expect(tapper.getByRole('heading', { name: 'Solved' })).toBeVisible();
  await picture(tapper, 'receipt-solved');

  // The solution is playable, the roll has the solvers, the standings rank them together.
  await tapper.goto(`${address}/solution`);
  await expect(tapper.getByRole('heading', { level: 1 })).toContainText(/rook .*h1/i);
  const roll = tapper.locator('.roll');
  for (const name of ['Tomasz B.', 'Zoë Lindqvist', 'Ilse Varga']) await expect(roll).toContainText(name);
  await expect(roll).not.toContainText('quiet_move');
  await picture(tapper, 'solution');
  await tapper.goto(`${app.origin}/standings`);
  const rows = tapper.locator('tbody tr');
  await expect(rows.filter({ hasText: 'Tomasz B.' })).toContainText('5');
  await expect(rows.filter({ hasText: 'Zoë Lindqvist' })).toContainText('5');
  await expect(rows.filter({ hasText: 'quiet_move' })).toContainText('0');
  await picture(tapper, 'standings');
});
