import { describe, expect, it } from 'vitest';
import { parsePuzzleFile } from '#lib/book/parse-puzzle-file.ts';
import { DEFAULT_TERMS } from '#lib/book/terms.ts';

const fen = '7k/8/5K2/8/8/8/6Q1/8 w - - 0 1';

function fieldOf(json: unknown): string {
  const parsed = parsePuzzleFile(json);
  return parsed.ok ? 'accepted' : `${parsed.reason.field} ${parsed.reason.code}`;
}

describe('parsePuzzleFile', () => {
  it('takes position and task alone, and fills in the defaults', () => {
    expect(parsePuzzleFile({ fen, task: 'mate in 3' })).toEqual({
      ok: true,
      value: { ...DEFAULT_TERMS, fen, task: { kind: 'mate', moves: 3 } },
    });
  });

  it('takes every field there is', () => {
    const file = {
      fen,
      task: 'win',
      published: ['1.Kf7 Kh7 2.Qg7#'],
      scheme: 'key-move',
      winBound: 250,
      slipBound: 100,
      drawBound: -50,
      drawSlipBound: -100,
      anyDefence: true,
      mateWritten: true,
      solverMoves: 4,
      strict: true,
      proofNodes: 1000,
      budgetNodes: 2000,
    };
    const { strict, task, ...rest } = file;
    expect(parsePuzzleFile(file)).toEqual({
      ok: true,
      value: { ...rest, task: { kind: task }, isStrict: strict },
    });
  });

  it.each<[string, unknown, string]>([
    ['a list', [], 'file not-an-object'],
    ['no position', { task: 'win' }, 'fen missing'],
    ['a position without kings', { fen: '8/8/8/8/8/8/8/8 w - - 0 1', task: 'win' }, 'fen wrong'],
    ['a number for a position', { fen: 7, task: 'win' }, 'fen wrong'],
    ['a game that is over', { fen: '7k/6Q1/5K2/8/8/8/8/8 b - - 0 1', task: 'win' }, 'fen game-over'],
    ['no task', { fen }, 'task missing'],
    ['a task in other words', { fen, task: 'mate in three' }, 'task wrong'],
    ['mate in none', { fen, task: 'mate in 0' }, 'task wrong'],
    ['mate in 21', { fen, task: 'mate in 21' }, 'task wrong'],
    ['a misspelt field', { fen, task: 'win', anyDefense: true }, 'anyDefense unknown'],
    ['a line that is no text', { fen, task: 'win', published: [1] }, 'published wrong'],
    ['a line where a list belongs', { fen, task: 'win', published: '1.Kf7' }, 'published wrong'],
    ['an unknown scheme', { fen, task: 'win', scheme: 'harsh' }, 'scheme wrong'],
    ['a bound in pawns', { fen, task: 'win', winBound: 1.5 }, 'winBound wrong'],
    ['bounds that cross', { fen, task: 'win', winBound: 100 }, 'slipBound bounds-crossed'],
    ['a yes that is a word', { fen, task: 'win', anyDefence: 'yes' }, 'anyDefence wrong'],
    ['no good moves', { fen, task: 'win', solverMoves: 0 }, 'solverMoves wrong'],
    ['a pinned end in a mate', { fen, task: 'mate in 2', solverMoves: 2 }, 'solverMoves wrong'],
    ['no nodes', { fen, task: 'win', budgetNodes: 0 }, 'budgetNodes wrong'],
  ])('refuses %s and names the field', (_, json, reason) => {
    expect(fieldOf(json)).toBe(reason);
  });

  it('[O1] a draw needs a published line or a pinned number', () => {
    expect(fieldOf({ fen, task: 'draw' })).toBe('published no-end');
    expect(fieldOf({ fen, task: 'draw', solverMoves: 2 })).toBe('accepted');
    expect(fieldOf({ fen, task: 'draw', published: ['1.Kf7'] })).toBe('accepted');
  });

  it('says what was expected, and quotes what was found, cut short', () => {
    const parsed = parsePuzzleFile({ fen, task: 'x'.repeat(200) });
    expect(!parsed.ok && parsed.reason.expected).toContain('"mate in N"');
    expect(!parsed.ok && (parsed.reason.found ?? '').length).toBeLessThan(90);
  });

  it('says in words what is wrong with a position, and what a draw lacks', () => {
    const kings = parsePuzzleFile({ fen: '8/8/8/8/8/8/8/8 w - - 0 1', task: 'win' });
    expect(!kings.ok && kings.reason.expected).toContain('(White must have one king and has 0.)');
    const draw = parsePuzzleFile({ fen, task: 'draw' });
    expect(!draw.ok && draw.reason.expected).toBe('published lines, or solverMoves, for a draw');
  });
});
