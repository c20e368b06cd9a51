import { expect, test } from 'vitest';
import { createRandom } from '#lib/kit/random.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { ANY_KIND, KIND_BIT, movesTo } from '#lib/rules/moves-to.ts';
import { playMove } from '#lib/rules/play-move.ts';
import { KINDS } from '#lib/rules/position.ts';
import { writeUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { positionOf } from '../support/positions.ts';
import { readCaseLines } from '../support/read-cases.ts';

test('to every square and by every kind the same moves as a filter over all legal moves, castling left out (seed 51)', () => {
  const random = createRandom(51);
  const starts = readCaseLines('perft.epd').map((line) => line.split(' ;')[0] ?? '');
  const wrong: string[] = [];
  for (let positions = 0; positions < 3000; ) {
    let position = positionOf(random.pick(starts));
    for (let ply = 0; ply < 40; ply += 1) {
      const moves = legalMoves(position);
      const plain = moves.filter(({ castle }) => castle === null);
      const kind = random.pick(KINDS);
      for (let to = 0; to < 64; to += 1) {
        const expected = plain.filter((move) => move.to === to);
        const all = movesTo(position, to, ANY_KIND).map(writeUci).sort();
        const some = movesTo(position, to, KIND_BIT[kind]).map(writeUci).sort();
        const isSame =
          all.join() === expected.map(writeUci).sort().join() &&
          some.join() ===
            expected
              .filter((move) => move.kind === kind)
              .map(writeUci)
              .sort()
              .join();
        if (!isSame) wrong.push(`${writeFen(position)} to ${to} by ${kind}`);
      }
      positions += 1;
      if (moves.length === 0) break;
      position = playMove(position, random.pick(moves));
    }
  }
  expect(wrong).toEqual([]);
});

test('a move says the same of itself as among all legal moves', () => {
  const position = positionOf('1n2k3/P7/8/3pP3/8/8/8/4K3 w - d6 0 2');
  const all = legalMoves(position);
  for (const move of all) expect(movesTo(position, move.to, ANY_KIND)).toContainEqual(move);
});
