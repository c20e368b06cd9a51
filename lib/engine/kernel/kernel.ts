// The kernel's door: the flat integer calls that the rest of the engine sees. Everything that other
// kernel files may build on: layout (addresses), position (men, manOn, sideToMove, inCheck,
// attackersTo, ...), generate (generate, generateNoisy, generateChecks, countMoves), checks
// (prepareChecks, givesCheck, markChecks), make (make, unmake, makeNull, countRepetitions), poll
// (startNodes, countNode, isStopped). A search keeps its move lists as a stack: it takes an address,
// writes its moves there and hands the address behind the last one to the next ply (from MOVES on).
// The search's table is 16 MiB at HEAP_BASE; the prover's lies at PROVER_TABLE, `tableBytes()` long.

import { initTables } from './bitboards';
import { countMoves, generate, generateChecks, generateNoisy } from './generate';
import { MOVES, OUTPUT } from './layout';
import { make, unmake } from './make';
import { beginMateQuestion, mateMove, movesMate, questionKey, refutingReply, shortestMate } from './mate-prove';
import { perftBulk, perftFull } from './perft';
import { nodesSoFar, startNodes, stopReason } from './poll';
import { inCheck, loadPosition, positionKey } from './position';
import { growTable, tableBytes } from './table-size';
import { initZobrist, keyFromBoard } from './zobrist';

export {
  beginMateQuestion,
  inCheck,
  loadPosition,
  make,
  mateMove,
  movesMate,
  nodesSoFar,
  questionKey,
  refutingReply,
  shortestMate,
  startNodes,
  stopReason,
  tableBytes,
  unmake,
};

/** Fills every table and takes memory for the prover's, of 2^`mebibytesLog2` MiB. Once, before anything else. */
export function initKernel(mebibytesLog2: u32): bool {
  initTables();
  initZobrist();
  return growTable(mebibytesLog2);
}

/** perft of the loaded position; `depth` 0 is 1. */
export function perft(depth: u32, isBulk: bool): u64 {
  if (depth == 0) return 1;
  return isBulk ? perftBulk(depth, MOVES) : perftFull(depth, MOVES);
}

/** Writes the legal moves (0 all, 1 captures and promotions, 2 checks) to OUTPUT and returns their number. */
export function listMoves(mode: u32): u32 {
  const end = mode == 0 ? generate(OUTPUT) : mode == 1 ? generateNoisy(OUTPUT) : generateChecks(OUTPUT);
  return <u32>((end - OUTPUT) >> 2);
}

/** The key of the loaded position, kept step by step or (`isFresh`) computed anew. */
export function readKey(isFresh: bool): u64 {
  return isFresh ? keyFromBoard() : positionKey();
}

export function legalCount(): u32 {
  return countMoves();
}

// Evaluation and search (root.ts), endgame tables (tables/entry.ts; in an instance of their own).
export * from './root';
export * from './tables/entry';
