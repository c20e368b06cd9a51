// Which calls does the kernel answer? The signatures of lib/engine/kernel/kernel.ts as seen from
// here, and the addresses that both sides must agree on (lib/engine/kernel/layout.ts).

import type { SearchCalls } from './search-calls.ts';

/** Addresses in the kernel's memory. */
export const INPUT = 0x280;
export const OUTPUT = 0x400;
export const NO_SQUARE = 64;

/** Booleans travel as 0 and 1, 64-bit numbers as BigInt. */
export interface KernelCalls extends SearchCalls {
  readonly memory: WebAssembly.Memory;
  initKernel(mebibytesLog2: number): number;
  loadPosition(): void;
  make(move: number): void;
  unmake(move: number): void;
  inCheck(): number;
  legalCount(): number;
  listMoves(mode: number): number;
  readKey(isFresh: number): bigint;
  perft(depth: number, isBulk: number): bigint;
  startNodes(limit: bigint): void;
  nodesSoFar(): bigint;
  /** 0 finished, 1 out of budget, 2 the caller asked to stop. */
  stopReason(): number;
  tableBytes(): number;
  beginMateQuestion(): void;
  /** 0 no, 1 yes, 2 stopped. */
  movesMate(move: number, moves: number): number;
  refutingReply(): number;
  /** 0 none, 255 stopped. */
  shortestMate(bound: number): number;
  mateMove(): number;
  questionKey(): bigint;
}
