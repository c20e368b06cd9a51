import { afterEach, beforeEach, vi } from 'vitest';

// An unexpected line on the console is a failure: silence must stay meaningful.
const lines: string[] = [];

beforeEach(() => {
  lines.length = 0;
  for (const name of ['error', 'warn'] as const) {
    vi.spyOn(console, name).mockImplementation((...parts: unknown[]) => {
      lines.push(`console.${name}: ${parts.map(String).join(' ')}`);
    });
  }
});

afterEach(() => {
  vi.restoreAllMocks();
  if (lines.length > 0) throw new Error(`Unexpected console output:\n${lines.join('\n')}`);
});
