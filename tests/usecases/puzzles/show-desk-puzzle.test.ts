import { describe, expect, test } from 'vitest';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { showDeskPuzzle, watchVerification } from '#lib/usecases/puzzles/show-desk-puzzle.ts';
import { verifyPuzzle } from '#lib/usecases/puzzles/verify-puzzle.ts';
import { buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { verifyHere } from '../../support/engine-in-process.ts';

givenDatabase();

async function verified(terms: PuzzleTerms) {
  const show = await buildShow();
  const { puzzleId } = await buildPuzzle(show, { terms, isPublished: false });
  await verifyPuzzle({ puzzleId, verify: verifyHere });
  const view = await showDeskPuzzle({ ...show, puzzleId, locale: 'en' });
  if (view === null) throw new Error('no view');
  return { ...show, puzzleId, view };
}

describe('[A5] the desk page of a puzzle', () => {
  test('[A5] a true claim is said in sentences and can be published', async () => {
    const { view } = await verified(MATE_IN_ONE);
    const sentence = (kind: string): string | undefined =>
      view.report.find((part) => part.kind === kind)?.sentences.join(' ');
    expect(sentence('claim')).toMatch(/^True/);
    expect(sentence('keys')).toContain('Ra8#');
    expect(sentence('published')).toContain('would be marked “Solved”');
    expect(view.deeds.publish).toEqual({ may: true });
    expect([view.needsReason, view.failingLines, view.state]).toEqual([false, 0, 'verified']);
    expect(view.deeds.close).toEqual({ may: false, code: 'wrong-state' });
  });

  test('[A5] a false claim cannot be published, and the page says why', async () => {
    const { view } = await verified({
      ...DEFAULT_TERMS,
      fen: '6k1/5ppp/8/8/8/8/5PPP/1R4K1 b - - 0 1',
      task: { kind: 'mate', moves: 1 },
    });
    expect(view.deeds.publish).toEqual({ may: false, code: 'claim-false' });
    expect(view.report[0]?.sentences[0]).toMatch(/^False/);
  });

  test('[V9] a published line that fails names what would mend it and asks for a reason', async () => {
    const { view } = await verified({ ...MATE_IN_ONE, published: ['Ra7', 'Ra8#', 'no move'] });
    const lines = view.report.find((part) => part.kind === 'published')?.sentences ?? [];
    expect(lines[0]).toContain('Change the line or the task');
    expect(lines[1]).toContain('would be marked “Solved”');
    expect(lines[2]).toContain('Correct it');
    expect([view.failingLines, view.needsReason]).toEqual([2, true]);
  });

  test('[A8] the page and its progress are those of the own show alone', async () => {
    const { puzzleId, showId } = await verified(MATE_IN_ONE);
    const other = await buildShow();
    expect(await showDeskPuzzle({ showId: other.showId, puzzleId, locale: 'en' })).toBeNull();
    expect(await watchVerification(other.showId, puzzleId)).toBeNull();
    expect(await watchVerification(showId, puzzleId)).toMatchObject({ state: 'done' });
  });
});
