import { expect, test } from 'vitest';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { squareName } from '#lib/rules/position.ts';
import { exampleMove } from '../../app/_ui/example-move.ts';
import { mateCases } from '../support/mate-cases.ts';
import { positionOf, START_FEN } from '../support/positions.ts';

test('[T2] the example under the answer field is never a move that could be played: it hints at nothing', () => {
  for (const { fen, id } of mateCases()) {
    const position = positionOf(fen);
    const { short } = exampleMove(position, 'en');
    const playable = legalMoves(position).map((move) => move.kind.toUpperCase() + squareName(move.to));
    expect(playable, id).not.toContain(short);
  }
});

test('it is said in the viewer’s letters, in other letters, and in words', () => {
  const start = positionOf('4k3/8/8/8/8/8/8/4K3 w - - 0 1');
  expect(exampleMove(start, 'en')).toEqual({ short: 'Nf3', other: 'Sf3', spoken: 'knight to f3' });
  expect(exampleMove(start, 'de')).toEqual({ short: 'Sf3', other: 'Nf3', spoken: 'Springer nach f3' });
  // Where the knight can go to f3, another example is taken.
  expect(exampleMove(positionOf(START_FEN), 'en').short).toBe('Nc6');
});
