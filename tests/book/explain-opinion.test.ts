import { describe, expect, test } from 'vitest';
import { explainOpinion, type Opinion, type OpinionFault, parseOpinion } from '#lib/book/explain-opinion.ts';
import type { Locale } from '#lib/words/locale.ts';

// Thomas R. Dawson, Illustrated London News, 1913.
const FEN = 'nk6/brpp2p1/brp4p/1p6/8/8/8/4K2R w - - 0 1';

function tell(change: Partial<Extract<Opinion, { kind: 'move' }>>, locale: Locale = 'en') {
  const plain = { name: 'Odd One', move: 'h1f1', depth: 7, centipawns: null, mateIn: null };
  return explainOpinion({ v: 1, kind: 'move', ...plain, ...change }, FEN, locale)[0];
}

describe('explainOpinion', () => {
  test.each([
    [
      'a mate',
      { mateIn: 2 },
      'The program that you named (“Odd One”) would play 1 Rf1 (mate in 2, depth 7).',
    ],
    [
      'being mated',
      { mateIn: -3, depth: null },
      'The program that you named (“Odd One”) would play 1 Rf1 (and be mated in 3).',
    ],
    [
      'a value, without a name',
      { name: '', centipawns: -40 },
      'The program that you named would play 1 Rf1 (-0.4, depth 7).',
    ],
    [
      'no value at all',
      { depth: null },
      'The program that you named (“Odd One”) would play 1 Rf1 and gives no value.',
    ],
  ])('tells %s', (_what, change, sentence) => {
    expect(tell(change)).toBe(sentence);
  });

  test('prints the move with German letters', () => {
    expect(tell({ mateIn: 2 }, 'de')).toBe(
      'Das Programm aus der Einstellung („Odd One“) würde 1 Tf1 spielen (Matt in 2, Tiefe 7).',
    );
  });

  test('a name that looks like a placeholder is printed as it is', () => {
    expect(tell({ name: '{move} <b>', mateIn: 2 })).toContain('(“{move} <b>”) would play 1 Rf1');
  });

  const FAULTS: readonly OpinionFault[] = [
    'cannot-start',
    'no-answer',
    'ended',
    'too-much-output',
    'illegal-move',
    'illegal-line',
  ];
  test.each(['en', 'de'] as const)('every failure has a sentence of its own in "%s"', (locale) => {
    const told = FAULTS.map((fault) => explainOpinion({ v: 1, kind: 'none', fault }, FEN, locale)[0]);
    expect(new Set(told).size).toBe(FAULTS.length);
  });

  test('says that no verdict hangs on it', () => {
    expect(explainOpinion({ v: 1, kind: 'none', fault: 'ended' }, FEN, 'en')[1]).toBe(
      'It stands beside the verdicts and changes none.',
    );
  });
});

describe('parseOpinion', () => {
  test.each([[null], ['text'], [{ v: 2, kind: 'none', fault: 'ended' }], [{}]])(
    'finds nothing in %j',
    (stored) => expect(parseOpinion(stored)).toBeNull(),
  );

  test('finds what was kept', () => {
    expect(parseOpinion({ v: 1, kind: 'none', fault: 'ended' })).toEqual({
      v: 1,
      kind: 'none',
      fault: 'ended',
    });
  });
});
