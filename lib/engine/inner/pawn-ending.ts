// Gives a kernel the exact table of king and pawn against king, which its evaluation always has, on
// every machine (rules V0 and V4): built from the endgame table once a process, in a tenth of a second.

import type { Engine } from '../create-engine.ts';
import { createTableSet } from '../table-set.ts';

const BYTES = 32_768;
let bits: Uint8Array | null = null;
const provided = new WeakSet<Engine>();

function pawnEndingBits(): Uint8Array {
  const values = createTableSet().values('KPK');
  if (values === null) throw new Error('nobody can stop the table of king and pawn against king');
  const packed = new Uint8Array(BYTES);
  const half = values.length / 2;
  values.forEach((value, at) => {
    const isWon = at < half ? value >= 1 && value < 128 : value >= 128 && value < 255;
    if (isWon) packed[at >> 3] = (packed[at >> 3] ?? 0) | (1 << (at & 7));
  });
  return packed;
}

/** Writes the bits into an engine that has not got them yet. */
export function providePawnEnding(engine: Engine): void {
  if (provided.has(engine)) return;
  bits ??= pawnEndingBits();
  new Uint8Array(engine.calls.memory.buffer, engine.calls.pawnEndingBits(), BYTES).set(bits);
  provided.add(engine);
}
