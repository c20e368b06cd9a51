// How many positions does the generator reach? The count that other generators publish too.

import { countMoves, generate } from './generate';
import { make, unmake } from './make';

/** Leaf count with the last ply counted without making its moves. `depth` >= 1. */
export function perftBulk(depth: u32, ptr: usize): u64 {
  if (depth == 1) return countMoves();
  const end = generate(ptr);
  let nodes: u64 = 0;
  for (let at = ptr; at < end; at += 4) {
    const move = load<u32>(at);
    make(move);
    nodes += perftBulk(depth - 1, end);
    unmake(move);
  }
  return nodes;
}

/** Leaf count with every move made and taken back. */
export function perftFull(depth: u32, ptr: usize): u64 {
  const end = generate(ptr);
  let nodes: u64 = 0;
  for (let at = ptr; at < end; at += 4) {
    const move = load<u32>(at);
    make(move);
    nodes += depth == 1 ? 1 : perftFull(depth - 1, end);
    unmake(move);
  }
  return nodes;
}
