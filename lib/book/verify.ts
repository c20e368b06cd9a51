// How does a question become rows of the book? The engine judges, the independent checker replays what
// can be replayed (rule T1), and a verdict whose check fails becomes unclear.

import { checkProof } from '#lib/checker/check-proof.ts';
import { checkRefutation } from '#lib/checker/check-refutation.ts';
import type { CheckStatus } from '#lib/checker/proof.ts';
import type { Engine } from '#lib/engine/create-engine.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { judgeMoves } from '#lib/engine/judge-moves.ts';
import type { TableSet } from '#lib/engine/table-set.ts';
import type { EngineProgress, MoveVerdict } from '#lib/engine/verdict.ts';
import type { BookRow, Lacking } from './book-row.ts';
import { claimAt } from './claim.ts';
import { type Question, questionsOf } from './question.ts';
import type { PuzzleTerms } from './terms.ts';

/** Turns a question into rows; may take seconds. Passed to whoever builds a book. */
export type Judge = (question: Question) => BookRow[];

/** What verifying needs besides the engine and the terms. */
export interface VerifyOptions {
  readonly tables?: TableSet;
  readonly shouldStop?: () => boolean;
  readonly onProgress?: (progress: EngineProgress) => void;
  readonly firstLook?: FirstLook;
}

/**
 * Win and draw, where the moves of one position are judged apart: `only`, a first look, of which the open verdicts
 * (`isOpenVerdict`) are not yet to be kept where no move holds; then what the first look found, for the second.
 */
export type FirstLook = 'only' | readonly BookRow[];

/** A judge for one puzzle on one engine. */
export function createJudge(engine: Engine, terms: PuzzleTerms, options: VerifyOptions = {}): Judge {
  const { firstLook, ...patience } = options;
  return (question) => {
    const verdicts = judgeMoves(engine, {
      fen: question.fen,
      moves: question.moves,
      claim: claimAt(terms, question.movesLeft),
      budgets: { proofNodes: terms.proofNodes, budgetNodes: terms.budgetNodes },
      // A book asks only about the diagram and about positions that moves which hold have led to (rule V2).
      isStart: isSamePlace(question.fen, terms.fen),
      ...(firstLook === 'only' ? { isAfterHolding: false } : { firstLook }),
      ...patience,
    });
    return verdicts.map((verdict) => toRow(question, verdict));
  };
}

/**
 * Rows for what an answer lacks (mechanics: at most 40 positions an answer). Rows whose check failed come
 * back as `unclear` with `check: 'failed'`: an alarm for the host (rule T1). Where `shouldStop` cuts it
 * short, the rows so far.
 */
export function verifyLacking(
  engine: Engine,
  terms: PuzzleTerms,
  lacking: readonly Lacking[],
  options: VerifyOptions = {},
): BookRow[] {
  const judge = createJudge(engine, terms, options);
  const rows: BookRow[] = [];
  for (const question of questionsOf(lacking)) {
    if (options.shouldStop?.() === true) break;
    rows.push(...judge(question));
  }
  return rows;
}

function toRow(question: Question, verdict: MoveVerdict): BookRow {
  const check = checkVerdict(question.fen, verdict);
  const row: BookRow = {
    ...verdict,
    position: question.position,
    movesLeft: question.movesLeft,
    check,
    engineVersion: ENGINE_VERSION,
  };
  return check === 'failed' ? { ...row, verdict: 'unclear', adequate: [], replies: [], evident: null } : row;
}

/** Replays the evidence of a verdict; values of a search and table results cannot be replayed. */
export function checkVerdict(fen: string, verdict: MoveVerdict): CheckStatus | 'not-checkable' {
  const { evidence, move } = verdict;
  switch (evidence.kind) {
    case 'proof': {
      const { proof } = evidence;
      const isOfMove = isSamePlace(proof.fen, fen) && proof.nodes[0]?.move === move;
      // The proof has to be of this move and of this length; else it proves something else.
      if (!isOfMove || (verdict.mateIn !== null && proof.n !== verdict.mateIn)) return 'failed';
      return checkProof(proof).status;
    }
    case 'refutation':
      return checkRefutation({ fen, move, reply: evidence.reply, movesLeft: evidence.movesLeft }).status;
    case 'large-proof':
      return 'too-large';
    case 'search':
    case 'table':
    case 'budget':
      return 'not-checkable';
  }
}

function isSamePlace(fen: string, other: string): boolean {
  return fen.split(' ').slice(0, 4).join(' ') === other.split(' ').slice(0, 4).join(' ');
}
