// Does a move that slips in a mate task keep a won position? Said in the explanation, earns nothing (rule V1).

import type { Position } from '#lib/rules/position.ts';
import { playUci } from '#lib/rules/uci.ts';
import type { Engine } from '../create-engine.ts';
import { searchPosition } from '../search-position.ts';
import type { MoveVerdict } from '../verdict.ts';
import { solverValue } from './bounds.ts';
import { exactResult, type Tables } from './exact-result.ts';

// A remark, asked of every slip of every position: at ten times this it was five sixths of the cost of a book.
const BUDGET_NODES = 10_000;
const WON_FROM = 300;

function keepsWin(engine: Engine, after: Position, tables: Tables): boolean | null {
  const exact = exactResult(after, tables);
  if (exact !== null) return exact.result === 'lost';
  const { shouldStop } = tables.work;
  const found = searchPosition(engine, { position: after, budgetNodes: BUDGET_NODES, shouldStop });
  if (found.wasStopped) return null;
  const last = found.depths.slice(-2);
  return last.length === 2 && last.every(({ value }) => solverValue(value) >= WON_FROM);
}

/** The verdicts with `stillWinning` filled in for moves that slip: a short search, or a table. */
export function withStillWinning(
  engine: Engine,
  position: Position,
  { verdicts, tables }: { readonly verdicts: readonly MoveVerdict[]; readonly tables: Tables },
): MoveVerdict[] {
  return verdicts.map((verdict) => {
    if (verdict.verdict !== 'slips') return verdict;
    const after = playUci(position, verdict.move);
    return after === null ? verdict : { ...verdict, stillWinning: keepsWin(engine, after, tables) };
  });
}
