// The kernel's board against the rules room, step by step along random games.

import { expect, test } from 'vitest';
import { createEngine, loadFen, loadPosition } from '#lib/engine/create-engine.ts';
import { listLegal } from '#lib/engine/kernel-moves.ts';
import { createRandom } from '#lib/kit/random.ts';
import { isCheck } from '#lib/rules/attacks.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { playMove } from '#lib/rules/play-move.ts';
import { positionKey } from '#lib/rules/position-key.ts';
import { writeUci } from '#lib/rules/uci.ts';
import { readCaseLines } from '../support/read-cases.ts';

const SEED = 20_261;

test(`[V0] along random games (seed ${SEED}) kernel and rules agree on moves, checks and which positions are equal`, () => {
  const engine = createEngine({ hashMiB: 1 });
  const random = createRandom(SEED);
  const keys = new Map<string, bigint>();
  const texts = new Map<bigint, string>();
  let seen = 0;
  for (const line of readCaseLines('perft.epd')) {
    const start = parseFen((line.split(';')[0] ?? '').trim());
    if (!start.ok) throw new Error(line);
    let position = start.value;
    loadPosition(engine, position);
    for (let ply = 0; ply < 30; ply += 1) {
      const ours = legalMoves(position);
      const theirs = listLegal(engine);
      expect(theirs.map(({ uci }) => uci)).toEqual(ours.map(writeUci).sort());
      expect(engine.calls.inCheck() === 1).toBe(isCheck(position));
      // The key kept step by step, the key of the board, and the rules' own idea of equality.
      const key = engine.calls.readKey(0);
      expect(engine.calls.readKey(1)).toBe(key);
      const text = positionKey(position);
      expect(keys.get(text) ?? key).toBe(key);
      expect(texts.get(key) ?? text).toBe(text);
      keys.set(text, key);
      texts.set(key, text);
      seen += 1;
      const move = ours[ours.length === 0 ? 0 : random.int(ours.length)];
      if (!move) break;
      const checking = engine.calls.listMoves(2);
      const checks = new Set<number>();
      for (let n = 0; n < checking; n += 1) {
        checks.add(engine.bytes().getUint32(0x400 + n * 4, true) & 0x1ffff);
      }
      const next = playMove(position, move);
      const code = theirs.find(({ uci }) => uci === writeUci(move))?.move ?? 0;
      expect(checks.has(code)).toBe(isCheck(next));
      // Made, taken back, made again: nothing may be left behind.
      engine.calls.make(code);
      engine.calls.unmake(code);
      expect(engine.calls.readKey(1)).toBe(key);
      expect(engine.calls.readKey(0)).toBe(key);
      engine.calls.make(code);
      position = next;
    }
  }
  expect(seen).toBeGreaterThan(5000);
});

test('[V0] an en passant square that allows no legal capture leaves the key unchanged', () => {
  const engine = createEngine({ hashMiB: 1 });
  // The capture would uncover the rook: positions with and without the square are the same.
  const pinned = '8/8/8/K2pP2r/8/8/8/7k w - d6 0 2';
  const keyOf = (fen: string) => {
    loadFen(engine, fen);
    return engine.calls.readKey(0);
  };
  expect(keyOf(pinned)).toBe(keyOf(pinned.replace('d6', '-')));
  const free = '8/8/8/3pP3/8/8/8/K6k w - d6 0 2';
  expect(keyOf(free)).not.toBe(keyOf(free.replace('d6', '-')));
});

test('[V0] a table size that is no power of two is our own mistake', () => {
  expect(() => createEngine({ hashMiB: 3 })).toThrow('power of two');
});
