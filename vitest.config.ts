import { defineConfig } from 'vitest/config';

// One runner for the core and for the database tests: `npm run test:core` leaves out the
// folders that need a server, `npm run test:db` runs only those.
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
