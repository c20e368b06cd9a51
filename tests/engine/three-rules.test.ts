import { describe, expect, test } from 'vitest';
import { perftCount } from '#lib/engine/count-moves.ts';
import { createEngine, loadPosition } from '#lib/engine/create-engine.ts';
import { listLegal } from '#lib/engine/kernel-moves.ts';
import { createRandom } from '#lib/kit/random.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { perft } from '#lib/rules/perft.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Position } from '#lib/rules/position.ts';
import { positionKey } from '#lib/rules/position-key.ts';
import { writeUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { otherBoard, otherLegalMoves } from '../support/other-rules.ts';
import { positionOf } from '../support/positions.ts';
import { readCaseLines } from '../support/read-cases.ts';

const starts = readCaseLines('perft.epd').map((line) => line.split(' ;')[0] ?? '');

/** Distinct positions of random play from the positions of the node count suite. */
function* randomPositions(seed: number, count: number): Generator<Position> {
  const random = createRandom(seed);
  const seen = new Set<string>();
  while (seen.size < count) {
    let position = positionOf(random.pick(starts));
    for (let ply = 0; ply < 80 && seen.size < count; ply += 1) {
      const key = positionKey(position);
      if (!seen.has(key)) {
        seen.add(key);
        yield position;
      }
      const moves = legalMoves(position);
      if (moves.length === 0) break;
      position = playMove(position, random.pick(moves));
    }
  }
}

describe('kernel, rules and chess.js', () => {
  const engine = createEngine({ hashMiB: 1 });

  test('they list the same legal moves in 30,000 distinct positions (seed 61)', () => {
    const wrong: string[] = [];
    for (const position of randomPositions(61, 30_000)) {
      loadPosition(engine, position);
      const kernel = listLegal(engine)
        .map(({ uci }) => uci)
        .join(' ');
      const ours = legalMoves(position).map(writeUci).sort().join(' ');
      const other = otherLegalMoves(otherBoard(writeFen(position))).join(' ');
      if (kernel !== ours || other !== ours) wrong.push(writeFen(position));
    }
    expect(wrong).toEqual([]);
  });

  test('kernel and rules count the same to three plies in 300 positions, in bulk and move by move (seed 62)', () => {
    const wrong: string[] = [];
    for (const position of randomPositions(62, 300)) {
      const fen = writeFen(position);
      const ours = perft(position, 3);
      if (perftCount(engine, fen, 3) !== ours || perftCount(engine, fen, 3, { bulk: false }) !== ours)
        wrong.push(fen);
    }
    expect(wrong).toEqual([]);
  });
});
