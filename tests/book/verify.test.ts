import { describe, expect, it } from 'vitest';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { checkVerdict, createJudge, verifyLacking } from '#lib/book/verify.ts';
import { createEngine } from '#lib/engine/create-engine.ts';
import type { MoveVerdict } from '#lib/engine/verdict.ts';

const MORPHY = 'kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1';
const terms: PuzzleTerms = { ...DEFAULT_TERMS, fen: MORPHY, task: { kind: 'mate', moves: 2 } };
const position = 'kbK5/pp6/1P6/8/8/8/8/R7 w - -';
const engine = createEngine({ hashMiB: 1 });

function verdictOn(move: string): MoveVerdict {
  const [row] = createJudge(engine, terms)({ fen: MORPHY, position, movesLeft: 2, moves: [move] });
  if (row === undefined) throw new Error('no verdict');
  return row;
}

describe('verifyLacking', () => {
  it('[T1] gives rows whose proof or refutation the independent checker has replayed', () => {
    const lacking = ['a1a6', 'a1a7'].map((move) => ({ fen: MORPHY, position, movesLeft: 2, move }));
    const rows = verifyLacking(engine, terms, lacking);
    expect(rows.map(({ move, verdict, check }) => [move, verdict, check])).toEqual([
      ['a1a6', 'holds', 'passed'],
      ['a1a7', 'slips', 'passed'],
    ]);
    expect(rows.every((row) => row.position === position && row.movesLeft === 2)).toBe(true);
  });

  it('[V0] gives the same rows a second time', () => {
    const lacking = [{ fen: MORPHY, position, movesLeft: 2, move: 'a1a6' }];
    expect(verifyLacking(engine, terms, lacking)).toEqual(verifyLacking(engine, terms, lacking));
  });

  it('stops between positions when told to', () => {
    const lacking = [{ fen: MORPHY, position, movesLeft: 2, move: 'a1a6' }];
    expect(verifyLacking(engine, terms, lacking, { shouldStop: () => true })).toEqual([]);
  });
});

describe('checkVerdict', () => {
  it("[T1] fails a proof of another move, of another length, or of another position's", () => {
    const verdict = verdictOn('a1a6');
    expect(checkVerdict(MORPHY, verdict)).toBe('passed');
    expect(checkVerdict(MORPHY, { ...verdict, move: 'a1a5' })).toBe('failed');
    expect(checkVerdict(MORPHY, { ...verdict, mateIn: 1 })).toBe('failed');
    expect(checkVerdict('kbK5/pp6/1P6/8/8/8/8/1R6 w - - 0 1', verdict)).toBe('failed');
  });

  it('[T1] fails a refutation after which mate follows all the same', () => {
    const verdict = verdictOn('a1a7');
    const evidence = { kind: 'refutation', reply: 'b7a6', movesLeft: 1, line: ['b7a6'] } as const;
    expect(checkVerdict(MORPHY, { ...verdict, move: 'a1a6', evidence })).toBe('failed');
  });

  it('[T1] says of values and tables that they cannot be replayed', () => {
    const evidence = { kind: 'search', line: ['b8a7'] } as const;
    expect(checkVerdict(MORPHY, { ...verdictOn('a1a7'), evidence })).toBe('not-checkable');
  });
});
