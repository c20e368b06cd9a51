import { expect, test } from 'vitest';
import { ok, type Result, refuse } from '#lib/kit/result.ts';

test('a result is told apart by ok and carries either the value or the reason', () => {
  const half = (n: number): Result<number, { code: 'odd'; n: number }> =>
    n % 2 === 0 ? ok(n / 2) : refuse({ code: 'odd', n });
  expect(half(8)).toEqual({ ok: true, value: 4 });
  expect(half(7)).toEqual({ ok: false, reason: { code: 'odd', n: 7 } });
});
