// After the reveal: a move left unclear gets the benefit of the doubt, a viewer without scripts asks for a second look,
// and host and helper settle it by keys. In a real browser, in light and dark, at the widths of phone and laptop.

import { type Browser, type BrowserContext, expect, type Page, test } from '@playwright/test';
import type { RunningApp } from '../support/running-app.ts';
import { openSlug } from './support/board-page.ts';
import { claimDesk } from './support/claim-desk.ts';
import { lookAtBoth } from './support/look-at.ts';
import { makeUnclear } from './support/make-unclear.ts';
import { problemsOf } from './support/quiet-page.ts';
import { startSampleApp } from './support/sample-app.ts';

const HOSTILE = '<img src=x onerror=alert(1)> \u202eIt was the other knight';

let app: RunningApp;
let slug = '';
let puzzle = '';
let desk: BrowserContext;
const receipts: string[] = [];

test.describe.configure({ mode: 'serial' });
test.beforeAll(async ({ browser }) => {
  // The program may have to be built first, and the sample is marked by the real engine.
  test.setTimeout(480_000);
  app = await startSampleApp();
  desk = await browser.newContext({ locale: 'en-GB', viewport: { width: 1280, height: 800 } });
  const page = await desk.newPage();
  await claimDesk(page, app.setupLink);
  await page.goto(`${app.origin}/desk`);
  await page.getByRole('link', { name: 'Into the corner' }).first().click();
  await page.waitForURL(/\/desk\/puzzles\/\d+/);
  puzzle = new URL(page.url()).pathname;
  slug = await openSlug(app.origin);
  await page.close();
});
test.afterAll(async () => {
  await desk?.close();
  await app?.stop();
});

/** A viewer on a phone, without scripts. */
async function viewer(browser: Browser): Promise<Page> {
  const context = await browser.newContext({
    javaScriptEnabled: false,
    viewport: { width: 360, height: 740 },
    locale: 'en-GB',
  });
  return context.newPage();
}

/** Looks at an address in light and dark, with every fold of its main part open if asked. */
async function look(context: BrowserContext, address: string, name: string, open = false): Promise<void> {
  const page = await context.newPage();
  const problems = problemsOf(page);
  await page.goto(address);
  if (open) for (const one of await page.locator('main summary').all()) await one.click();
  problems.push(...(await lookAtBoth(page, `second-look/${name}`)));
  await page.close();
  expect(problems, name).toEqual([]);
}

/** Sends a line without scripts; gives the receipt's address. */
async function send(page: Page, text: string, name: string): Promise<string> {
  await page.goto(`${app.origin}/p/${slug}`);
  await page.getByLabel('Your line, in any notation or language').fill(text);
  await page.getByRole('button', { name: 'Read it back to me' }).click();
  await page.getByLabel('Your name, if it may be read out').fill(name);
  await page.getByRole('button', { name: 'Send it' }).click();
  await page.waitForURL(/\/r\//);
  return page.url();
}

test('[V8] the reveal lists a move left unclear; going on counts it, marked benefit of the doubt', async ({
  browser,
}) => {
  await makeUnclear(app.dataDir, slug, 'h1h3');
  for (const [text, name] of [
    ['1.Rh3', 'Quiet Rook'],
    ['Rh2', 'Low Rook'],
  ] as const) {
    const page = await viewer(browser);
    receipts.push(await send(page, text, name));
    await expect(page.locator('main')).not.toContainText('second look');
    await page.context().close();
  }
  const page = await desk.newPage();
  await page.goto(app.origin + puzzle);
  await page.getByRole('button', { name: 'Close now' }).click();
  await expect(page.getByText('Closed', { exact: true })).toBeVisible();
  await expect(async () => {
    await page.goto(app.origin + puzzle);
    await expect(page.getByText('All answers are marked.')).toBeVisible({ timeout: 1000 });
  }).toPass({ timeout: 60_000 });
  await expect(page.getByText('The engine could not settle this move. Rule on it first:')).toBeVisible();
  await expect(page.getByRole('link', { name: '1 Rh3' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Reveal the solution' })).toHaveCount(0);
  await look(desk, app.origin + puzzle, 'desk-before-reveal', true);
  await page.getByText('Go on all the same').click();
  await page.getByRole('button', { name: 'Reveal, in favour of the viewers' }).click();
  await expect(page.getByText('Revealed').first()).toBeVisible();
  await page.close();

  const reader = await viewer(browser);
  await reader.goto(receipts[0] ?? '');
  await expect(reader.getByRole('heading', { level: 1 })).toHaveText('Solved');
  await expect(reader.locator('main')).toContainText('benefit of the doubt');
  await reader.goto(`${app.origin}/p/${slug}/solution?try=h1h3`);
  await expect(reader.locator('#lines')).toContainText('benefit of the doubt');
  await expect(reader.locator('#why-not')).toContainText('benefit of the doubt');
  const open = await browser.newContext({ locale: 'en-GB' });
  await look(open, receipts[0] ?? '', 'receipt-benefit');
  await look(open, `${app.origin}/p/${slug}/solution?try=h1h3`, 'solution-benefit');
  await open.close();
  await reader.context().close();
});

test('[A2] a viewer without scripts asks on a phone; the host settles by keys; the viewer reads the reply', async ({
  browser,
}) => {
  const receipt = receipts[1] ?? '';
  const asker = await viewer(browser);
  await asker.goto(receipt);
  await expect(asker.getByRole('heading', { level: 1 })).toHaveText('Wrong first move');
  const open = await browser.newContext({ locale: 'en-GB' });
  await look(open, receipt, 'receipt-ask', true);
  await asker.getByText('Ask for a second look').click();
  await asker.getByLabel('What should be looked at?').fill(HOSTILE);
  await asker.getByRole('button', { name: 'Ask for it' }).click();
  await expect(asker.getByText('It waits for the host.')).toBeVisible();
  await expect(asker.getByRole('button', { name: 'Ask for it' })).toHaveCount(0);
  await look(open, receipt, 'receipt-waits');

  const page = await desk.newPage();
  await page.goto(app.origin + puzzle);
  await expect(page.getByRole('link', { name: 'One second look waits for you.' })).toBeVisible();
  await look(desk, `${app.origin}${puzzle}/doubtful`, 'desk-look');
  await page.goto(`${app.origin}${puzzle}/doubtful`);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Second look');
  await expect(page.locator('main')).toContainText('It was the other knight');
  await expect(page.getByRole('group', { name: 'Ways to settle it' })).toBeFocused();
  // A slip of the key first, taken back; then the reply, out of the field by Escape, and the word.
  await page.keyboard.press('1');
  await expect(page.getByText('Settled. The viewer can read it now.')).toBeVisible();
  await page.getByRole('button', { name: 'Take it back' }).click();
  await expect(page.getByRole('group', { name: 'Ways to settle it' })).toBeFocused();
  await page.keyboard.press('r');
  await expect(page.getByLabel(/reply/)).toBeFocused();
  await page.keyboard.type('You are right: 2 keys of 1 kind.');
  await page.keyboard.press('Escape');
  await page.keyboard.press('2');
  await expect(page.getByText('Settled. The viewer can read it now.')).toBeVisible();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Nothing is doubtful');

  await asker.goto(receipt);
  await expect(asker.getByRole('heading', { level: 1 })).toHaveText('Solved');
  await expect(asker.locator('#second-look')).toContainText('the mark was changed');
  await expect(asker.locator('#second-look')).toContainText('You are right: 2 keys of 1 kind.');
  await look(open, receipt, 'receipt-settled');
  await page.goto(`${app.origin}${puzzle}/answers`);
  await page.getByRole('link', { name: 'Low Rook' }).click();
  await expect(page.locator('main')).toContainText('Settled by host');
  await look(desk, page.url(), 'desk-mark');
  await asker.context().close();
  await open.close();
  await page.close();
});

test('[A2, A8] a helper may settle, and a withdrawn look is on no list', async ({ browser }) => {
  const receipt = receipts[0] ?? '';
  const asker = await viewer(browser);
  await asker.goto(receipt);
  await asker.getByText('Ask for a second look').click();
  await asker.getByRole('button', { name: 'Ask for it' }).click();
  await expect(asker.getByText('It waits for the host.')).toBeVisible();

  const owner = await desk.newPage();
  await owner.goto(`${app.origin}/desk/members`);
  await owner.getByLabel('Sign-in name').fill('tom');
  await owner.getByLabel('First password').fill('lanterns at low tide');
  await owner.getByRole('button', { name: 'Let a helper in' }).click();
  await expect(owner.getByText('tom', { exact: true })).toBeVisible();
  await owner.close();
  const helper = await (await browser.newContext({ locale: 'en-GB' })).newPage();
  await helper.goto(`${app.origin}/desk/sign-in`);
  await helper.getByLabel('Sign-in name').fill('tom');
  await helper.getByLabel('Password').fill('lanterns at low tide');
  await helper.getByRole('button', { name: 'Sign in to the desk' }).click();
  await expect(helper.getByRole('heading', { name: 'Episodes' })).toBeVisible();
  await helper.goto(`${app.origin}${puzzle}/doubtful`);
  await expect(helper.getByRole('heading', { level: 1 })).toHaveText('Second look');
  await expect(helper.locator('main')).toContainText('No words were given.');
  await helper.getByRole('group', { name: 'Ways to settle it' }).focus();
  await helper.keyboard.press('1');
  await expect(helper.getByText('Settled. The viewer can read it now.')).toBeVisible();
  await asker.goto(receipt);
  await expect(asker.locator('#second-look')).toContainText('the mark stands');
  await asker.getByText('Withdraw the answer', { exact: true }).click();
  await asker.getByRole('button', { name: 'Withdraw it now' }).click();
  await expect(asker.getByRole('heading', { level: 1 })).toHaveText('Withdrawn');
  await expect(asker.locator('main')).not.toContainText('second look');
  await helper.context().close();
  await asker.context().close();
});
