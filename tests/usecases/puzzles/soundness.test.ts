import { expect, test } from 'vitest';
import { createTree } from '#lib/book/position-tree.ts';
import { createBook } from '#lib/book/solution-book.ts';
import { reportOf } from '#lib/usecases/puzzles/soundness.ts';
import { MATE_IN_ONE } from '../../support/build-show.ts';
import { verifyHere } from '../../support/engine-in-process.ts';

test('[V9] the stored report holds what the book says and every published line with its own mark', async () => {
  const terms = { ...MATE_IN_ONE, published: ['Ra8#', 'nothing of the kind', 'Ra7'] };
  const tree = createTree(terms.fen);
  const lacking = tree
    .moves(tree.root)
    .map((move) => ({ fen: terms.fen, position: tree.root.bookPosition, movesLeft: 1, move }));
  const report = reportOf(terms, createBook(await verifyHere({ terms, lacking })));
  expect(report.soundness).toMatchObject({ v: 1, claim: 'true', isUnique: true });
  expect(report.publishedLines.map((line) => line.outcome)).toEqual(['solved', 'chatter', 'wrong']);
  expect(JSON.parse(JSON.stringify(report)), 'plain data').toEqual(report);
});
