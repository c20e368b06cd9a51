import { describe, expect, it } from 'vitest';
import { createBook } from '#lib/book/solution-book.ts';
import { toRow } from '../support/ruled-book.ts';

const place = { position: '7k/8/5K2/8/8/8/6Q1/8 w - -', movesLeft: 2 };
const key = { ...place, move: 'g2g7' };

describe('createBook', () => {
  it('finds a row under position, moves left and move, and under nothing else', () => {
    const book = createBook([toRow(key, { verdict: 'holds', mateIn: 1 })]);
    expect(book.find(key)?.mateIn).toBe(1);
    expect(book.find({ ...key, movesLeft: 1 })).toBeNull();
    expect(book.find({ ...key, movesLeft: null })).toBeNull();
    expect(book.find({ ...key, move: 'g2g6' })).toBeNull();
  });

  it('[V6] a position reached by another order of moves is the same position', () => {
    const book = createBook([toRow(key, { verdict: 'holds' })]);
    expect(book.rowsAt(place.position, place.movesLeft).map(({ move }) => move)).toEqual(['g2g7']);
  });

  it('only grows: a second verdict under a key stays out', () => {
    const book = createBook([toRow(key, { verdict: 'holds' })]);
    book.add([toRow(key, { verdict: 'slips' }), toRow({ ...key, move: 'g2g6' }, { verdict: 'slips' })]);
    expect(book.find(key)?.verdict).toBe('holds');
    expect(book.rows()).toHaveLength(2);
    expect(book.size).toBe(2);
  });

  it('names the engine of its verdicts', () => {
    const book = createBook([]);
    expect(book.version).toBe('');
    book.add([toRow(key, { verdict: 'holds' })]);
    expect(book.version).toBe('ruled');
  });

  it('[V8] keeps rulings beside the verdicts; the last one is in force', () => {
    const book = createBook(
      [toRow(key, { verdict: 'unclear' })],
      [{ ...key, verdict: 'slips', reason: 'first look' }],
    );
    expect(book.ruling(key)?.verdict).toBe('slips');
    book.addRulings([{ ...key, verdict: 'holds', reason: 'second look' }]);
    expect(book.ruling(key)?.reason).toBe('second look');
    expect(book.find(key)?.verdict).toBe('unclear');
  });
});
