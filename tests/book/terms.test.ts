import { expect, test } from 'vitest';
import { DEFAULT_TERMS } from '#lib/book/terms.ts';

test('[V2] [V3] the default bounds are those of the marking rules, and each hold bound lies above its slip bound', () => {
  expect(DEFAULT_TERMS).toMatchObject({ winBound: 300, slipBound: 150, drawBound: -75, drawSlipBound: -150 });
  expect(DEFAULT_TERMS.winBound).toBeGreaterThan(DEFAULT_TERMS.slipBound);
  expect(DEFAULT_TERMS.drawBound).toBeGreaterThan(DEFAULT_TERMS.drawSlipBound);
});
