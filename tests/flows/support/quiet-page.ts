import type { Browser, Page } from '@playwright/test';

/** A page of a context of its own; `problems` fills with whatever its console, an error or a dialog says. */
export interface QuietPage {
  readonly page: Page;
  readonly problems: string[];
  readonly close: () => Promise<void>;
}

/** Whatever the page's console, an error or a dialog says from now on, a line each. */
export function problemsOf(page: Page): string[] {
  const problems: string[] = [];
  page.on('pageerror', (error) => problems.push(error.message));
  page.on('dialog', (dialog) => {
    problems.push(`a dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') problems.push(message.text());
  });
  return problems;
}

/** Opens a page whose console must stay silent: breaches of the content policy show there. */
export async function quietPage(
  browser: Browser,
  options: Parameters<Browser['newContext']>[0] = {},
): Promise<QuietPage> {
  const context = await browser.newContext({ locale: 'en-GB', ...options });
  const page = await context.newPage();
  return { page, problems: problemsOf(page), close: () => context.close() };
}
