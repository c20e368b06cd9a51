import { describe, expect, it } from 'vitest';
import { buildBook } from '#lib/book/build-book.ts';
import { explainSoundness } from '#lib/book/explain-soundness.ts';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { createJudge } from '#lib/book/verify.ts';
import { writeSoundnessReport } from '#lib/book/write-soundness-report.ts';
import { createEngine } from '#lib/engine/create-engine.ts';
import type { Locale } from '#lib/words/locale.ts';

const engine = createEngine({ hashMiB: 1 });

function told(terms: PuzzleTerms, locale: Locale): Readonly<Record<string, readonly string[]>> {
  const report = writeSoundnessReport(terms, buildBook({ terms, judge: createJudge(engine, terms) }));
  return Object.fromEntries(
    explainSoundness(report, terms, locale).map(({ kind, sentences }) => [kind, sentences]),
  );
}

const ladder: PuzzleTerms = {
  ...DEFAULT_TERMS,
  fen: '7k/8/8/8/8/8/R7/1R4K1 w - - 0 1',
  task: { kind: 'mate', moves: 3 },
  published: ['1.Ra6 Kg8 2.Rb7 Kf8 3.Ra8#'],
};

describe('explainSoundness', () => {
  it('tells claim, keys, duals and checks in plain English', () => {
    const parts = told(ladder, 'en');
    expect(parts.claim).toEqual(['True: mate in 3 can be forced.', 'There is something quicker: mate in 2.']);
    expect(parts.keys?.[0]).toContain('5 first moves hold: 1 Ra7 (mate in 2), 1 Rb7 (mate in 2)');
    expect(parts.duals).toEqual(['After 1 Ra6 Kg8, not only 2 Rb7 works but also 2 Ra7.']);
    expect(parts.checked?.[0]).toMatch(/^\d+ of \d+ verdicts that can be replayed were replayed/);
    expect(parts.values).toBeUndefined();
  });

  it('tells the same in German, with German letters', () => {
    const parts = told(ladder, 'de');
    expect(parts.claim).toEqual([
      'Richtig: Matt in 3 lässt sich erzwingen.',
      'Es geht schneller: Matt in 2.',
    ]);
    expect(parts.duals).toEqual(['Nach 1 Ta6 Kg8 geht nicht nur 2 Tb7, sondern auch 2 Ta7.']);
  });

  it('[O1] says that a decided diagram needs an end', () => {
    const terms: PuzzleTerms = {
      ...DEFAULT_TERMS,
      fen: '4k3/8/8/4K3/4P3/8/8/8 w - - 0 1',
      task: { kind: 'win' },
    };
    expect(told(terms, 'en').claim?.[1]).toMatch(/publish a line or pin the number of moves/);
  });

  it('[A5] names the true task of a false claim', () => {
    const terms: PuzzleTerms = {
      ...DEFAULT_TERMS,
      fen: 'kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1',
      task: { kind: 'mate', moves: 1 },
    };
    expect(told(terms, 'en').claim).toEqual(['False: no first move forces mate in 1.', 'It is a mate in 2.']);
  });
});
