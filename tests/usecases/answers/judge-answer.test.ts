import { expect, test } from 'vitest';
import { createTree } from '#lib/book/position-tree.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { writeUci } from '#lib/rules/uci.ts';
import { findAnswer } from '#lib/store/answers.ts';
import { appendBookRows, budgetsKey } from '#lib/store/books.ts';
import { db } from '#lib/store/client.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { judgeAnswer } from '#lib/usecases/answers/judge-answer.ts';
import { loadBook } from '#lib/usecases/answers/loaded-book.ts';
import { submitAnswer } from '#lib/usecases/answers/submit-answer.ts';
import { submission } from '../../support/build-answer.ts';
import { buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { verifyHere } from '../../support/engine-in-process.ts';

givenDatabase();

async function opinionOn(text: string) {
  const { puzzleId, slug } = await buildPuzzle(await buildShow(), { terms: MATE_IN_ONE });
  await db().puzzle.update({ where: { id: puzzleId }, data: { engineVersion: ENGINE_VERSION } });
  const { root } = createTree(MATE_IN_ONE.fen);
  const place = { fen: MATE_IN_ONE.fen, position: root.bookPosition, movesLeft: 1 };
  const lacking = legalMoves(root.position).map((move) => ({ ...place, move: writeUci(move) }));
  const rows = await verifyHere({ terms: MATE_IN_ONE, lacking });
  await appendBookRows(db(), puzzleId, rows, budgetsKey(MATE_IN_ONE));
  const sent = await submitAnswer(submission(slug, text));
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  const book = puzzle === null ? null : await loadBook(db(), puzzle);
  const answer = sent.ok ? await findAnswer(db(), sent.value.answerId) : null;
  if (book === null || answer === null) throw new Error('nothing to judge');
  return judgeAnswer(book, answer);
}

test('[A4] an answer whose positions the book knows gets its mark without further questions', async () => {
  const { result, doubt, isAddressed } = await opinionOn('1.Ra8#');
  expect(result).toMatchObject({ kind: 'mark', mark: { outcome: 'solved', points: 5 } });
  expect({ doubt, isAddressed }).toEqual({ doubt: null, isAddressed: false });
});

test('[R2] a text that looks like an answer and cannot be read is doubtful by the characters in question', async () => {
  const { result, doubt } = await opinionOn('1. R9 2. Kx');
  expect(result).toMatchObject({ kind: 'mark', mark: { outcome: 'unreadable' } });
  expect(doubt).toMatch(/^token ./);
});
