import { expect, test } from 'vitest';
import { askAll } from '#lib/book/question.ts';
import { createBook } from '#lib/book/solution-book.ts';
import { createJudge } from '#lib/book/verify.ts';
import { createEngine } from '#lib/engine/create-engine.ts';
import { reportOf } from '#lib/usecases/puzzles/soundness.ts';
import { MATE_IN_ONE } from '../../support/build-show.ts';
import { positionOf } from '../../support/positions.ts';

function bookOfMateInOne() {
  const question = askAll(positionOf(MATE_IN_ONE.fen), 1, createBook([]));
  if (question === null) throw new Error('Nothing to ask.');
  return createBook(createJudge(createEngine({ hashMiB: 16 }), MATE_IN_ONE)(question));
}

test('[V9] published lines are marked like a viewer’s: each keeps its text and its own mark', () => {
  const terms = { ...MATE_IN_ONE, published: ['Ra8#', 'Kf1', 'a rook somewhere'] };
  const report = reportOf(terms, bookOfMateInOne());
  expect(report.publishedLines.map((line) => [line.text, line.outcome])).toEqual([
    ['Ra8#', 'solved'],
    ['Kf1', 'wrong'],
    ['a rook somewhere', 'chatter'],
  ]);
  expect(report.publishedLines[0]).toMatchObject({ p: 1, r: 1, atMove: null });
});

test('[V7] the report survives being stored as JSON', () => {
  const report = reportOf(MATE_IN_ONE, bookOfMateInOne());
  expect(JSON.parse(JSON.stringify(report))).toEqual(report);
  expect(report.soundness).toMatchObject({ claim: 'true', isUnique: true });
});
