import { expect, test } from 'vitest';
import { orderNames, type SheetName } from '#lib/readout/order-names.ts';
import type { ThingToSay } from '#lib/standings/things-to-say.ts';

function name(solverId: number, things: ThingToSay[] = [], readOutAgo: number | null = null): SheetName {
  return { solverId, name: `solver ${solverId}`, things, readOutAgo, looksLike: null };
}
const order = (names: SheetName[]): number[] => orderNames(names).map((one) => one.solverId);

test('[S3] those with something to say come first, by what is said', () => {
  expect(
    order([
      name(1),
      name(2, [{ code: 'good-words', words: 'x' }]),
      name(3, [{ code: 'first-time' }]),
      name(4, [{ code: 'only-other-way' }]),
    ]),
  ).toEqual([4, 3, 2, 1]);
});

test('[S3] a name read out on the last sheet steps back behind those with nothing to say', () => {
  expect(order([name(1, [{ code: 'run', length: 5 }], 1), name(2)])).toEqual([2, 1]);
});

test('[S3] the longer ago, the less far back; after three sheets it is as if never', () => {
  expect(order([name(1, [], 1), name(2, [], 2), name(3, [], 3), name(4, [], 4), name(5)])).toEqual([
    4, 5, 3, 2, 1,
  ]);
});

test('[S3] a correction comes first, even of a name just read out', () => {
  expect(order([name(1, [{ code: 'first-time' }]), name(2, [{ code: 'put-right' }], 1)])).toEqual([2, 1]);
});
