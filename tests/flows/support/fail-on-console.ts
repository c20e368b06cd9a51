import type { Page } from '@playwright/test';

/** Makes a test fail on any console error or uncaught exception: that is how breaches of the content policy show. */
export function failOnConsole(page: Page): void {
  page.on('pageerror', (error) => {
    throw new Error(`uncaught in the page: ${error.message}`);
  });
  page.on('console', (message) => {
    if (message.type() === 'error')
      throw new Error(`console error at ${page.url()}: ${message.text()} (${message.location().url})`);
  });
}
