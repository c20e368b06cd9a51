import { existsSync } from 'node:fs';
import { defineConfig, devices } from '@playwright/test';

// Chromium where it is installed; without one the test tool looks for its own.
const chromium = [
  process.env.CHROMIUM_PATH,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
].find((path) => path !== undefined && existsSync(path));

export default defineConfig({
  testDir: 'tests/flows',
  globalSetup: './tests/flows/support/build-first.ts',
  outputDir: '.artifacts/playwright',
  // Each file starts a program of its own: two at a time keep two cores busy, and no file waits for another.
  workers: 2,
  timeout: 240_000,
  expect: { timeout: 20_000 },
  reporter: [['list'], ['json', { outputFile: '.cache/playwright.json' }]],
  use: {
    ...devices['Desktop Chrome'],
    viewport: { width: 1280, height: 800 },
    actionTimeout: 20_000,
    navigationTimeout: 45_000,
    trace: 'retain-on-failure',
    launchOptions: {
      ...(chromium === undefined ? {} : { executablePath: chromium }),
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
});
