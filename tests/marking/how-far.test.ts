import { describe, expect, it } from 'vitest';
import { createBook } from '#lib/book/solution-book.ts';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { howFarSentence } from '#lib/marking/how-far.ts';
import { toRow } from '../support/ruled-book.ts';

const fen = 'q3k3/8/8/3N4/8/8/5PPP/6K1 w - - 0 1';
const row = toRow(
  { position: 'q3k3/8/8/3N4/8/8/5PPP/6K1 w - -', movesLeft: null, move: 'd5c7' },
  { verdict: 'holds', evident: true },
);

describe('howFarSentence', () => {
  it.each<[Partial<PuzzleTerms>, string, string]>([
    [{ task: { kind: 'mate', moves: 1 } }, 'The mating move is enough.', 'Der Mattzug genügt.'],
    [{ task: { kind: 'mate', moves: 2 } }, 'The first move is enough.', 'Der erste Zug genügt.'],
    [
      { task: { kind: 'mate', moves: 3 } },
      'To the mate; the last move may be left out.',
      'Bis zum Matt; der letzte Zug darf fehlen.',
    ],
    [
      { task: { kind: 'mate', moves: 2 }, mateWritten: true },
      'To the mate, the mating move included.',
      'Bis zum Matt; der Mattzug gehört dazu.',
    ],
    [{ task: { kind: 'win' }, solverMoves: 4 }, '4 good moves are enough.', '4 gute Züge genügen.'],
    [{ task: { kind: 'draw' }, solverMoves: 1 }, 'One good move is enough.', 'Ein guter Zug genügt.'],
    [
      { task: { kind: 'win' } },
      'Go on until the win is clear to everyone.',
      'Bis der Gewinn für alle klar ist.',
    ],
  ])('[O1] for %j says so in both languages', (more, english, german) => {
    const terms: PuzzleTerms = { ...DEFAULT_TERMS, fen, task: { kind: 'win' }, ...more };
    expect(howFarSentence(terms, createBook([]), 'en')).toBe(english);
    expect(howFarSentence(terms, createBook([]), 'de')).toBe(german);
  });

  it('[O1] says about how many moves, where the book knows', () => {
    const terms: PuzzleTerms = { ...DEFAULT_TERMS, fen, task: { kind: 'win' } };
    expect(howFarSentence(terms, createBook([row]), 'en')).toBe(
      'Go on until the win is clear to everyone (the first move may be enough).',
    );
    const longer = { ...terms, published: ['1.Nc7+ Kd7 2.Nxa8 Kc8 3.h4'] };
    const unknown = createBook([{ ...row, evident: false }]);
    expect(howFarSentence(longer, unknown, 'de')).toBe('Bis der Gewinn für alle klar ist (etwa 3 Züge).');
  });
});
