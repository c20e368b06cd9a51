// A published puzzle with its book, and amendments of it: asked for, verified here, put in force.

import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { db } from '#lib/store/client.ts';
import { loadPuzzle, loadTerms } from '#lib/store/puzzles.ts';
import { proposeAmendment, type TypedAmendment } from '#lib/usecases/puzzles/propose-amendment.ts';
import { putAmendmentInForce } from '#lib/usecases/puzzles/put-amendment-in-force.ts';
import { verifyAmendment } from '#lib/usecases/puzzles/verify-amendment.ts';
import { verifyPuzzle } from '#lib/usecases/puzzles/verify-puzzle.ts';
import { buildPuzzle, buildShow } from './build-show.ts';
import { verifyHere } from './engine-in-process.ts';
import { accepted } from './positions.ts';

/** White mates in three by 1 c6 and promotes; 1 e3 or 1 e4 wastes a move and mates in four. From this file's own hand. */
export const PAWN_RACE: PuzzleTerms = {
  ...DEFAULT_TERMS,
  fen: '7k/p4K1p/7P/2P5/8/8/4P3/8 w - - 0 1',
  task: { kind: 'mate', moves: 3 },
  published: ['1.c6 a6 2.c7'],
};

/** A published and verified puzzle; times in minutes from now. */
export async function buildVerified(
  terms: PuzzleTerms,
  times: { readonly opens?: number; readonly closes?: number } = {},
) {
  const show = await buildShow();
  const puzzle = await buildPuzzle(show, { terms, ...times });
  await verifyPuzzle({ puzzleId: puzzle.puzzleId, verify: verifyHere });
  return { ...show, ...puzzle };
}

/** What a host types who changes this of the terms in force. */
export async function typedAmendment(
  { puzzleId, memberId }: { readonly puzzleId: number; readonly memberId: number },
  change: Partial<PuzzleTerms>,
  more: Partial<TypedAmendment> = {},
): Promise<TypedAmendment> {
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  if (puzzle === null) throw new Error('no such puzzle');
  const terms = { ...(await loadTerms(db(), puzzle)), ...change };
  return { puzzleId, memberId, terms, title: puzzle.title, howFar: '', note: 'A misprint, sorry.', ...more };
}

/** Corrects a puzzle from the asking to the end; gives the revision that is in force now. */
export async function amend(
  puzzle: { readonly puzzleId: number; readonly memberId: number },
  change: Partial<PuzzleTerms>,
  overrideReason: string | null = null,
): Promise<number> {
  const { puzzleId, memberId } = puzzle;
  accepted(await proposeAmendment(await typedAmendment(puzzle, change)));
  await verifyAmendment({ puzzleId, verify: verifyHere });
  return accepted(await putAmendmentInForce({ puzzleId, memberId, overrideReason }));
}
