import { defineConfig } from 'vitest/config';

// One runner for everything but the browser flows; `npm run validate` leaves out the folders that need a server.
export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 120_000,
    teardownTimeout: 10_000,
    setupFiles: ['tests/support/quiet.ts'],
  },
});
