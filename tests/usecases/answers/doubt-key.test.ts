import { describe, expect, test } from 'vitest';
import type { Mark } from '#lib/marking/mark.ts';
import { readText } from '#lib/reading/read-text.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { doubtKey, findUnclearMove, plainText, textHash } from '#lib/usecases/answers/doubt-key.ts';
import { BACK_RANK } from '../../support/build-show.ts';

const MARK: Mark = {
  outcome: 'solved',
  flags: [],
  points: 5,
  p: 1,
  r: 1,
  atMove: null,
  line: ['a1a8'],
  reading: null,
  verdicts: [{ uci: 'a1a8', verdict: 'holds', mateIn: 1, value: null, by: null }],
  reason: { code: 'solved', params: {} },
  scheme: 'full-line',
  schemeVersion: 1,
  readerVersion: 1,
  engineVersion: null,
};

function keyOf(text: string, mark: Partial<Mark>) {
  const position = parseFen(BACK_RANK);
  if (!position.ok) throw new Error(BACK_RANK);
  return doubtKey(BACK_RANK, text, { ...MARK, ...mark }, readText({ position: position.value, text }));
}

describe('which doubtful answers belong together', () => {
  test('nobody is needed for what is decided', () => {
    for (const outcome of ['solved', 'slower', 'slipped', 'wrong', 'impossible', 'chatter'] as const)
      expect(keyOf('Ra8', { outcome })).toBeNull();
    expect(keyOf('Ra8', { outcome: 'unfinished' })).toBeNull();
  });

  test('[V8] an unclear verdict groups by move and position, whatever the words', () => {
    const verdicts = [{ ...MARK.verdicts[0]!, verdict: 'unclear' as const }];
    const key = keyOf('Ra8', { outcome: 'unclear', verdicts });
    expect(key).toBe('verdict a1a8 6k1/5ppp/8/8/8/8/5PPP/R5K1 w - -');
    expect(keyOf('I say: rook to a8!', { outcome: 'unclear', verdicts })).toBe(key);
  });

  test('[R6] two readings group by text, blanks and case aside', () => {
    const key = keyOf('Ra8  or Ra7', { outcome: 'ambiguous' });
    expect(keyOf('ra8 OR ra7 ', { outcome: 'ambiguous' })).toBe(key);
    expect(keyOf('Ra8 or Ra6', { outcome: 'ambiguous' })).not.toBe(key);
  });

  test('[R6] readings that part at one place are one question, whatever the words and what follows', () => {
    const reason = { code: 'two-readings', params: { moves: ['a1a7', 'a1a8'] } };
    const key = keyOf('Ra8 or Ra7', { outcome: 'unclear', reason });
    expect(key).toMatch(/^reading /);
    expect(keyOf('a8 or a7!', { outcome: 'ambiguous', reason })).toBe(key);
    const elsewhere = { ...reason, params: { moves: ['a1a6', 'a1a8'] } };
    expect(keyOf('Ra8 or Ra7', { outcome: 'unclear', reason: elsewhere })).not.toBe(key);
  });

  test('[R16] a text cut by its source is doubtful only where it is unfinished', () => {
    expect(keyOf('Ra', { outcome: 'unfinished', flags: ['cut-by-source'] })).toMatch(/^cut /);
    expect(keyOf('Ra8', { outcome: 'solved', flags: ['cut-by-source'] })).toBeNull();
  });
});

describe('the unclear move of a line', () => {
  test('is found behind the reply that was filled in, with the solver moves before it counted', () => {
    const verdicts = [
      { uci: 'g1f1', verdict: 'holds' as const, mateIn: null, value: null, by: null },
      { uci: 'a1a8', verdict: 'unclear' as const, mateIn: null, value: null, by: null },
    ];
    const found = findUnclearMove(BACK_RANK, { line: ['g1f1', 'g8f8', 'a1a8'], verdicts });
    expect(found).toEqual({
      position: '5k2/5ppp/8/8/8/8/5PPP/R4K2 w - -',
      move: 'a1a8',
      solverMovesBefore: 1,
    });
  });

  test('is none where all is clear', () => {
    expect(findUnclearMove(BACK_RANK, MARK)).toBeNull();
  });
});

test('texts are compared without case, width and blanks', () => {
  expect(plainText('  ＲＡ８\n!')).toBe('ra8 !');
  expect(textHash('Ra8')).toBe(textHash('RA8 '));
});
