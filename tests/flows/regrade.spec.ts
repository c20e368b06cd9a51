// Marking everybody again in a real browser: asked for, looked at, said yes to one by one, written at one
// stroke, or dropped; and the alarm about a way that a viewer found. Both modes, both widths, keyboard alone.

import { createHash } from 'node:crypto';
import { type Browser, expect, type Page, test } from '@playwright/test';
import type { RunningApp } from '../support/running-app.ts';
import { inDatabase } from './support/app-database.ts';
import { claimDesk } from './support/claim-desk.ts';
import { lookAtBoth } from './support/look-at.ts';
import { quietPage } from './support/quiet-page.ts';
import { startSampleApp } from './support/sample-app.ts';

const SIGNED_IN = '.cache/regrade.json';

let app: RunningApp;
/** Address of the sample's second puzzle, a mate in three that is revealed. */
let puzzle = '';

test.describe.configure({ mode: 'serial' });
test.beforeAll(async ({ browser }) => {
  app = await startSampleApp();
  const context = await browser.newContext();
  const page = await context.newPage();
  await claimDesk(page, app.setupLink);
  await context.storageState({ path: SIGNED_IN });
  await inDatabase(app.dataDir, async (client) => {
    const { rows } = await client.query('select id from puzzle where mate_moves = 3');
    puzzle = `/desk/puzzles/${rows[0].id}`;
  });
  await context.close();
});
test.afterAll(async () => {
  await app?.stop();
});

/** The mate has to be written from now on, so that full answers fall; one text is ruled to mean the key. */
async function changeWhatMarksRestOn(): Promise<void> {
  await inDatabase(app.dataDir, async (client) => {
    await client.query('update puzzle set mate_written = true where mate_moves = 3');
    await client.query(
      `insert into ruling (puzzle_id, kind, text_hash, meant, reason)
       select id, 'reading', $1, '{b7a8n}', 'a slip of the pen' from puzzle where mate_moves = 3`,
      [createHash('sha256').update('bxa8=q').digest('hex')],
    );
  });
}

const signedIn = (browser: Browser, options: Parameters<Browser['newContext']>[0] = {}) =>
  quietPage(browser, { storageState: SIGNED_IN, ...options });

async function look(page: Page, name: string): Promise<void> {
  expect(await lookAtBoth(page, `regrade/${name}`)).toEqual([]);
}

async function askFor(page: Page, reason: string): Promise<void> {
  await page.goto(`${app.origin}${puzzle}/regrade`);
  await page.getByLabel('Why?').fill(reason);
  await page.getByRole('button', { name: 'Mark everybody again' }).click();
  await expect(page.getByRole('heading', { name: 'What would change' })).toBeVisible({ timeout: 90_000 });
}

test('[A7] nothing would change, and the host drops it', async ({ browser }) => {
  const { page, problems, close } = await signedIn(browser);
  await page.goto(`${app.origin}${puzzle}`);
  await page.getByRole('link', { name: 'Mark everybody again' }).click();
  await expect(page.getByText('Every answer is marked again on what is known now.')).toBeVisible();
  await look(page, 'ask');
  await askFor(page, 'to be sure');
  await expect(page.getByText('No outcome and no points would change.')).toBeVisible();
  await page.getByRole('button', { name: 'Drop it' }).click();
  await expect(page.getByText('to be sure · dropped')).toBeVisible();
  expect(problems).toEqual([]);
  await close();
});

test('[A7] falls are asked about one by one, by keyboard; what is not ticked keeps its mark', async ({
  browser,
}) => {
  await changeWhatMarksRestOn();
  const { page, problems, close } = await signedIn(browser);
  await askFor(page, 'the mate has to be written');
  const asked = page.getByRole('region', { name: 'Need your word one by one' });
  await expect(asked.getByRole('checkbox')).not.toHaveCount(0);
  for (const box of await asked.getByRole('checkbox').all()) await expect(box).not.toBeChecked();
  await expect(page.getByRole('region', { name: 'Change along with the whole' })).toContainText(
    'Mirela Dukova',
  );
  await look(page, 'preview');

  await page.goto(`${app.origin}${puzzle}`);
  await expect(page.getByText('A regrade waits for your word')).toBeVisible();
  await look(page, 'puzzle-waits');
  await page.getByRole('link', { name: 'See what would change' }).click();

  const box = asked.getByRole('checkbox', { name: /Ottoline Farrow/ });
  await box.focus();
  await page.keyboard.press('Space');
  await expect(box).toBeChecked();
  await page.getByRole('button', { name: 'Write it down' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText(/the mate has to be written · .* written/)).toBeVisible({ timeout: 90_000 });
  await look(page, 'written');

  await page.goto(`${app.origin}${puzzle}/answers`);
  const line = (name: string) => page.getByRole('row').filter({ hasText: name });
  await expect(line('Ottoline Farrow')).toContainText('Right so far');
  await expect(line('Bruno Kastell')).toContainText('Solved');
  await expect(line('Mirela Dukova')).toContainText('Right so far');
  await page.goto(`${app.origin}/desk/log`);
  await expect(page.getByText('Marks changed by a regrade').first()).toBeVisible();
  await expect(page.getByText('Said yes to a regrade').first()).toBeVisible();
  expect(problems).toEqual([]);
  await close();
});

test('[A7] a preview that was overtaken is not written, and the page says so', async ({ browser }) => {
  const { page, problems, close } = await signedIn(browser);
  await askFor(page, 'once more');
  const other = await page.context().newPage();
  await askFor2(other);
  await page.getByRole('button', { name: 'Write it down' }).click();
  await expect(page.getByRole('main').getByRole('alert')).toContainText(/Look at it again|how it stands now/);
  expect(problems).toEqual([]);
  await close();
});

/** Somebody else asks meanwhile, through the list of doubtful answers or a correction: here by the table. */
async function askFor2(page: Page): Promise<void> {
  await inDatabase(app.dataDir, async (client) => {
    await client.query(
      `update regrade set scope = jsonb_set(scope, '{round}', '7') where decided_at is null`,
    );
  });
  await page.close();
}

test('[A7] the page works without scripts', async ({ browser }) => {
  const { page, close } = await signedIn(browser, { javaScriptEnabled: false });
  await page.goto(`${app.origin}${puzzle}/regrade`);
  await page.getByRole('button', { name: 'Drop it' }).click();
  await expect(page.getByText('once more · dropped')).toBeVisible();
  await page.getByLabel('Why?').fill('without scripts');
  await page.getByRole('button', { name: 'Mark everybody again' }).click();
  await expect(async () => {
    await page.goto(`${app.origin}${puzzle}/regrade`);
    await expect(page.getByRole('button', { name: 'Write it down' })).toBeVisible({ timeout: 2000 });
  }).toPass({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Write it down' }).click();
  await expect(async () => {
    await page.goto(`${app.origin}${puzzle}/regrade`);
    await expect(page.getByText(/without scripts · .* written/)).toBeVisible({ timeout: 2000 });
  }).toPass({ timeout: 60_000 });
  await close();
});

test('[A7] a helper sees the page and cannot decide; without a sign-in there is nothing to see', async ({
  browser,
}) => {
  const { page: owner, close } = await signedIn(browser);
  await owner.goto(`${app.origin}/desk/members`);
  await owner.getByLabel('Sign-in name').fill('tom');
  await owner.getByLabel('First password').fill('lanterns at low tide');
  await owner.getByRole('button', { name: 'Let a helper in' }).click();
  await expect(owner.getByText('tom', { exact: true })).toBeVisible();
  const nobody = { storageState: { cookies: [], origins: [] } };
  const { page, close: closeHelper } = await signedIn(browser, nobody);
  await page.goto(`${app.origin}/desk/sign-in`);
  await page.getByLabel('Sign-in name').fill('tom');
  await page.getByLabel('Password').fill('lanterns at low tide');
  await page.getByRole('button', { name: 'Sign in to the desk' }).click();
  await expect(page.getByRole('heading', { name: 'Episodes' })).toBeVisible();
  await page.goto(`${app.origin}${puzzle}/regrade`);
  await expect(page.getByText('The owner of the show decides on this.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Mark everybody again' })).toHaveCount(0);
  for (const place of [`${puzzle}/regrade`, `${puzzle}/regrade/progress`]) {
    const reply = await fetch(app.origin + place, { redirect: 'manual' });
    expect([200, 307, 303, 401]).toContain(reply.status);
    expect(await reply.text()).not.toMatch(/without scripts|Mark everybody again|"stage"/);
  }
  await closeHelper();
  await close();
});

test('[A5] a way that a viewer found alarms the host, with the way to mark everybody again', async ({
  browser,
}) => {
  // As if another first move had been published, before the book knew of the knight.
  await inDatabase(app.dataDir, async (client) => {
    await client.query(
      `update published_line set text = '1.Kh5' where puzzle_id in (select id from puzzle where mate_moves = 3)`,
    );
    await client.query(`
      update puzzle set verified_at = '2020-01-01', published_at = '2020-01-01', opens_at = '2020-01-02'
      where mate_moves = 3`);
  });
  const { page, problems, close } = await signedIn(browser);
  await askFor(page, 'another way');
  await page.getByRole('button', { name: 'Write it down' }).click();
  await expect(page.getByText(/another way · .* written/)).toBeVisible({ timeout: 90_000 });
  await page.goto(`${app.origin}${puzzle}`);
  const alarm = page.getByRole('region', { name: 'Another way was found' });
  await expect(alarm).toContainText(/viewers found another way: 1.bxa8=N/);
  await expect(alarm).toContainText('Everybody was marked again since.');
  await inDatabase(app.dataDir, async (client) => {
    await client.query(`update regrade set created_at = '2020-01-01'`);
  });
  await page.reload();
  await expect(alarm).toContainText('did not know this when the puzzle was published');
  await look(page, 'alarm');
  await alarm.getByRole('link', { name: 'Mark everybody again' }).click();
  await expect(page.getByLabel('Why?')).toBeVisible();
  expect(problems).toEqual([]);
  await close();
});
