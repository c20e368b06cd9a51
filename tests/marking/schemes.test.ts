import { describe, expect, it } from 'vitest';
import { type Earned, editScheme, pointsFor, SCHEMES } from '#lib/marking/schemes.ts';

const full = SCHEMES['full-line'];
const key = SCHEMES['key-move'];

describe('pointsFor', () => {
  it.each<[string, Earned, number]>([
    ['solved is 5', { outcome: 'solved', p: 1, r: 1, first: 'holds' }, 5],
    ['slower from the first move is 2', { outcome: 'slower', p: 0, r: 2, first: 'slower' }, 2],
    ['slower late is more where p of r is', { outcome: 'slower', p: 3, r: 4, first: 'holds' }, 3],
    ['1 of 2 is 1 + floor(1.5)', { outcome: 'unfinished', p: 1, r: 2, first: 'holds' }, 2],
    ['1 of 4 is 1 + floor(0.75)', { outcome: 'slipped', p: 1, r: 4, first: 'holds' }, 1],
    ['2 of 3 is 1 + floor(2)', { outcome: 'impossible', p: 2, r: 3, first: 'holds' }, 3],
    ['an unclear move keeps what stands before it', { outcome: 'unclear', p: 1, r: 2, first: 'holds' }, 2],
    ['a slower move without its mate is 0', { outcome: 'unfinished', p: 0, r: 2, first: 'slower' }, 0],
    ['wrong is 0', { outcome: 'wrong', p: 0, r: 2, first: 'slips' }, 0],
    ['chatter is 0', { outcome: 'chatter', p: 0, r: 1, first: null }, 0],
  ])('[P1] full line: %s', (_, earned, points) => {
    expect(pointsFor(full, earned)).toBe(points);
  });

  it.each<[string, Earned, number]>([
    ['a first move that holds is 5, whatever follows', { outcome: 'slipped', p: 1, r: 2, first: 'holds' }, 5],
    ['a slower first move is 2', { outcome: 'unfinished', p: 0, r: 2, first: 'slower' }, 2],
    ['a first move that slips is 0', { outcome: 'wrong', p: 0, r: 2, first: 'slips' }, 0],
    [
      'an unclear first move is 0 until it is ruled on',
      { outcome: 'unclear', p: 0, r: 2, first: 'unclear' },
      0,
    ],
  ])('[P1] key move: %s', (_, earned, points) => {
    expect(pointsFor(key, earned)).toBe(points);
  });

  it('[P1] a part never reaches the whole, for any p of r', () => {
    for (let r = 2; r <= 12; r += 1) {
      for (let p = 1; p < r; p += 1) {
        expect(pointsFor(full, { outcome: 'unfinished', p, r, first: 'holds' })).toBeLessThan(full.solved);
      }
    }
  });
});

describe('editScheme', () => {
  it('[P1] other numbers are the next version, and pointsFor follows them', () => {
    const edited = editScheme(full, { solved: 10, slower: 4, base: 2, perLine: 6 });
    if (!edited.ok) throw new Error(edited.reason.code);
    expect(edited.value).toEqual({
      name: 'full-line',
      version: 2,
      solved: 10,
      slower: 4,
      part: { base: 2, perLine: 6 },
    });
    expect(pointsFor(edited.value, { outcome: 'unfinished', p: 1, r: 2, first: 'holds' })).toBe(5);
  });

  it('[P1] a key-move scheme has no parts to edit', () => {
    const edited = editScheme(key, { solved: 3, slower: 0, base: Number.NaN, perLine: Number.NaN });
    expect(edited).toMatchObject({ ok: true, value: { part: null, solved: 3 } });
  });

  it.each<[string, Parameters<typeof editScheme>[1], object]>([
    [
      'a fraction',
      { solved: 4.5, slower: 2, base: 1, perLine: 3 },
      { code: 'not-a-number', field: 'solved', least: 1 },
    ],
    [
      'nothing for a solved answer',
      { solved: 0, slower: 0, base: 0, perLine: 0 },
      { code: 'not-a-number', field: 'solved' },
    ],
    [
      'more than a hundred',
      { solved: 101, slower: 2, base: 1, perLine: 3 },
      { code: 'not-a-number', field: 'solved', most: 100 },
    ],
    [
      'less than nothing',
      { solved: 5, slower: -1, base: 1, perLine: 3 },
      { code: 'not-a-number', field: 'slower' },
    ],
    [
      'a later mate above a solved one',
      { solved: 5, slower: 6, base: 1, perLine: 3 },
      { code: 'slower-above-solved' },
    ],
    ['a part above the whole', { solved: 5, slower: 2, base: 3, perLine: 3 }, { code: 'part-above-solved' }],
  ])('[P3] refuses %s', (_, numbers, reason) => {
    expect(editScheme(full, numbers)).toMatchObject({ ok: false, reason });
  });
});
