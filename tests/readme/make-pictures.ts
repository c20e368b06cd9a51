// Makes the pictures of the README from the running program with its sample show: `npm run pictures`.

import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { claimDesk } from '../flows/support/claim-desk.ts';
import { type RunningApp, startRunningApp } from '../support/running-app.ts';

const FOLDER = import.meta.dirname;

/** The sample is made by the worker after the start; the first page shows when it is there. */
async function waitForSample(page: Page, app: RunningApp): Promise<string> {
  for (let tries = 0; tries < 180; tries += 1) {
    await page.goto(app.origin);
    const past = await page.locator('a[href$="/solution"]').count();
    const open = await page.locator('main a[href^="/p/"]:not([href$="/solution"])').first();
    if (past > 1 && (await open.count()) > 0) return (await open.getAttribute('href')) ?? '';
    await page.waitForTimeout(1000);
  }
  throw new Error('the sample was not made within three minutes');
}

const program = process.env.CHROMIUM_PATH ?? '/usr/bin/chromium';
const app = await startRunningApp(['--sample']);
const browser = await chromium.launch({
  ...(existsSync(program) ? { executablePath: program } : {}),
  args: ['--no-sandbox', '--disable-gpu'],
});
try {
  const phone = await browser.newPage({ viewport: { width: 360, height: 740 }, deviceScaleFactor: 2 });
  const address = await waitForSample(phone, app);
  await phone.goto(`${app.origin}${address}`);
  await phone.screenshot({ path: join(FOLDER, 'puzzle-page.png'), fullPage: true });
  const desk = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await claimDesk(desk, app.setupLink);
  // The newest episode that is over: the one the host reads out next.
  await desk.locator('.contents li').filter({ hasText: 'Revealed' }).first().locator('a').click();
  await desk.getByRole('link', { name: 'Read-out sheet' }).click();
  await desk.waitForURL(/\/sheet/);
  await desk.screenshot({ path: join(FOLDER, 'read-out-sheet.png') });
} finally {
  await browser.close();
  await app.stop();
}
