// How a page is looked at in every flow: pictures for people to look at, axe, and nothing that scrolls sideways.

import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What axe finds on a page as it stands: rule and first place, a line each. */
export async function violationsOn(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
  return violations.map((one) => `${one.id} at ${one.nodes.map((node) => node.target.join(' ')).join(', ')}`);
}

/**
 * Looks at a page at the widths of a phone and a laptop: a picture each (`.artifacts/NAME-WIDTH.png`), and what axe or
 * a sideways scroll finds, a line each; none where all is well.
 */
export async function lookAt(page: Page, name: string): Promise<string[]> {
  const found: string[] = [];
  mkdirSync(dirname(`.artifacts/${name}`), { recursive: true });
  for (const width of [360, 1280]) {
    await page.setViewportSize({ width, height: 800 });
    await page.screenshot({ path: `.artifacts/${name}-${width}.png`, fullPage: true });
    found.push(...(await violationsOn(page)).map((one) => `${name} ${width}: ${one}`));
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    if (sideways > 0) found.push(`${name} ${width}: scrolls sideways by ${sideways}`);
  }
  return found;
}

/** The same in light and in dark. */
export async function lookAtBoth(page: Page, name: string): Promise<string[]> {
  const found: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    found.push(...(await lookAt(page, `${name}-${colorScheme}`)));
  }
  return found;
}
