import { expect, test } from 'vitest';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';

test('[V0] the version names the kernel that was built, so that another kernel is another version', () => {
  expect(ENGINE_VERSION).toMatch(/^\d+\.[0-9a-f]{8}$/);
});
