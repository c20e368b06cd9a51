// What does the operator's own program think of the diagram? Asked after verification, kept beside the
// puzzle and never mixed with our verdicts; where it fails, the failure is what is kept.

import type { Opinion } from '#lib/book/explain-opinion.ts';
import { log } from '#lib/machine/log.ts';
import { askUciProgram } from '#lib/machine/uci-program.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { db } from '#lib/store/client.ts';
import { toJson } from '#lib/store/json.ts';
import { saveSecondOpinion } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';

/** The program's time for one diagram, in milliseconds, its start included. */
const BUDGET_MS = 20_000;

/** What became of it; `none` where the puzzle is gone or the program was not asked. */
export type OpinionOutcome = 'answered' | 'failed' | 'none';

/** Asks the program at the path and keeps what it says; null where it is set aside. `budgetMs` is for tests. */
export async function askSecondOpinion(asked: {
  readonly puzzleId: number;
  readonly program: string | null;
  readonly budgetMs?: number;
}): Promise<OpinionOutcome> {
  const { puzzleId, program, budgetMs = BUDGET_MS } = asked;
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  if (puzzle === null) return 'none';
  const { fen, budgetNodes } = puzzle.terms;
  const opinion: Opinion =
    program === null
      ? { v: 1, kind: 'none', fault: 'set-aside' }
      : await opinionOf(program, { fen, nodes: budgetNodes, budgetMs });
  await saveSecondOpinion(db(), { puzzleId, fen }, toJson(opinion));
  if (program === null) return 'none';
  return opinion.kind === 'none' ? 'failed' : 'answered';
}

async function opinionOf(
  path: string,
  { fen, ...limits }: { readonly fen: string; readonly nodes: number; readonly budgetMs: number },
): Promise<Opinion> {
  const position = parseFen(fen);
  if (!position.ok) throw new Error(`A puzzle holds no position: ${fen}`);
  const answer = await askUciProgram({ path, args: [] }, { position: position.value, ...limits });
  if (!answer.ok) {
    log().warn({ fen, ...answer.reason }, 'the second opinion was not usable');
    return { v: 1, kind: 'none', fault: answer.reason.code };
  }
  const { name, move, depth, centipawns, mateIn } = answer.value;
  // A foreign text: what cannot be shown cannot be stored either.
  return { v: 1, kind: 'move', name: name.replace(/\p{C}/gu, ''), move, depth, centipawns, mateIn };
}
