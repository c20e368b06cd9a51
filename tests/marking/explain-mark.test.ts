import { describe, expect, it } from 'vitest';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { explainMark, type MarkToExplain } from '#lib/marking/explain-mark.ts';
import type { MarkReason } from '#lib/marking/mark.ts';
import type { Reason } from '#lib/marking/reasons.ts';
import { LOCALES } from '#lib/words/locale.ts';

const HEALEY: PuzzleTerms = {
  ...DEFAULT_TERMS,
  fen: '8/1n3Np1/1N4Q1/1bkP4/p1p2p2/P1P2R2/3P2PK/B2R4 w - - 0 1',
  task: { kind: 'mate', moves: 3 },
};

function mark(more: Partial<MarkToExplain> & { readonly reason: Reason | MarkReason }): MarkToExplain {
  return { outcome: 'solved', atMove: null, p: 0, r: 2, line: [], flags: [], ...more };
}

const NOT_SLOWER = { slowerAt: null, mateOn: 4 };

const slip = mark({
  outcome: 'slipped',
  atMove: 2,
  p: 1,
  line: ['d1h1', 'b5d7', 'g6d6'],
  flags: ['still-winning'],
  reason: {
    code: 'slip',
    params: { how: 'no-mate', movesLeft: 1, by: ['b7d6'], better: ['g6b1'], ...NOT_SLOWER },
  },
});

describe('explainMark', () => {
  it('[A1] tells a slip by the defence and names the move that was right', () => {
    expect(explainMark(slip, HEALEY, 'en')).toBe(
      'Your first move is right. After 2 Qd6+ Black plays 2 … Nxd6, and there is no mate next move. 2 Qb1 was the move. You keep a winning position, but not the mate asked for.',
    );
  });

  it('[A1] says of a last move that it is not mate, and what the defender has', () => {
    const last: MarkToExplain = {
      ...slip,
      outcome: 'wrong',
      atMove: 1,
      p: 0,
      line: ['g6g7'],
      flags: [],
      reason: {
        code: 'slip',
        params: { how: 'no-mate', movesLeft: 0, by: ['c5b6'], better: [], ...NOT_SLOWER },
      },
    };
    expect(explainMark(last, HEALEY, 'en')).toBe('1 Qxg7 is not mate: Black has 1 … Kxb6.');
    expect(explainMark(last, HEALEY, 'de')).toBe('1 Dxg7 setzt nicht matt: Schwarz hat noch 1 … Kxb6.');
  });

  it("[A1] tells it in German with German letters, or in anybody's with figurines", () => {
    expect(explainMark(slip, HEALEY, 'de')).toContain('Nach 2 Dd6+ spielt Schwarz 2 … Sxd6');
    expect(explainMark(slip, HEALEY, 'en', { letters: 'figurine' })).toContain(
      'After 2 ♕d6+ Black plays 2 … ♘xd6',
    );
  });

  it.each<[string, MarkToExplain, string]>([
    [
      '[O1] what was still missing',
      mark({
        outcome: 'unfinished',
        p: 1,
        line: ['d1h1'],
        reason: { code: 'unfinished', params: { missing: 1, rest: ['b5d7', 'g6b1'] } },
      }),
      'Right as far as it goes, but it stops too early. One more move was needed. It could have gone on 1 … Bd7 2 Qb1.',
    ],
    [
      '[O2] a weak defence',
      mark({
        outcome: 'unfinished',
        p: 1,
        line: ['d1h1', 'b5c6', 'g6c6'],
        flags: ['weak-defence'],
        reason: { code: 'weak-defence', params: { at: 1, better: ['b5d7'] } },
      }),
      'Right so far, but 1 … Bc6 is not the best defence, so the rest does not count. What if 1 … Bd7?',
    ],
    [
      '[V1] a slower mate',
      mark({
        outcome: 'slower',
        line: ['d1e1'],
        reason: { code: 'slower', params: { at: 1, mateOn: 4, asked: 3 } },
      }),
      '1 Re1 mates too, but against the best defence only on move 4; mate in 3 was asked.',
    ],
    [
      '[O0] a slower mate stopped short',
      mark({
        outcome: 'unfinished',
        line: ['d1e1'],
        reason: { code: 'slower-not-shown', params: { at: 1, mateOn: 4, weakAt: null, better: [] } },
      }),
      '1 Re1 mates too, but only on move 4, and your answer stops before it shows the mate.',
    ],
    [
      '[O2] a slower mate against a weak defence: neither right so far nor stopped short',
      mark({
        outcome: 'unfinished',
        line: ['d1e1', 'b5c6', 'g6c6'],
        flags: ['weak-defence'],
        reason: { code: 'slower-not-shown', params: { at: 1, mateOn: 4, weakAt: 1, better: ['b5e8'] } },
      }),
      '1 Re1 mates too, but only on move 4. 1 … Bc6 is not the best defence, so the rest does not count. What if 1 … Be8?',
    ],
    [
      '[O0] a slip after a slower move tells both',
      mark({
        outcome: 'slipped',
        atMove: 2,
        line: ['d1e1', 'b5e8', 'g6d6'],
        reason: {
          code: 'slip',
          params: { how: 'no-mate', movesLeft: 1, by: ['b7d6'], better: [], slowerAt: 1, mateOn: 4 },
        },
      }),
      '1 Re1 mates too, but only on move 4. After 2 Qd6+ Black plays 2 … Nxd6, and there is no mate next move.',
    ],
    [
      '[O4] two moves for one place: why the better one did not count',
      mark({
        outcome: 'unfinished',
        line: ['d1e1'],
        reason: {
          code: 'slower-not-shown',
          params: { at: 1, mateOn: 4, weakAt: null, better: [], choice: 'worse' },
        },
      }),
      'You give two moves for one and the same place in the line; the worse one counts. 1 Re1 mates too, but only on move 4, and your answer stops before it shows the mate.',
    ],
    [
      '[O0] what cannot be played, quoted',
      mark({
        outcome: 'impossible',
        atMove: 2,
        p: 1,
        line: ['d1h1', 'b5d7'],
        reason: { code: 'impossible', params: { text: 'Kf8', ...NOT_SLOWER } },
      }),
      'Your first move is right. “Kf8” cannot be played at move 2.',
    ],
    [
      '[O4] both moves right',
      mark({ line: ['d1h1'], flags: ['found-both'], reason: { code: 'solved', params: {} } }),
      'Right. Both of the moves you give are right.',
    ],
    [
      '[O1] something wrong after the end',
      mark({ line: ['d1h1'], flags: ['past-the-end'], reason: { code: 'solved', params: {} } }),
      'Right. What you wrote after that does not work, but it was no longer needed and costs nothing.',
    ],
    [
      '[R6] two readings',
      mark({
        outcome: 'unclear',
        line: [],
        reason: { code: 'two-readings', params: { moves: ['f3e3', 'd1e1'] } },
      }),
      'Your text can be read in two ways (1 Re3, 1 Re1), and they are not worth the same; the host decides.',
    ],
    [
      '[R6] two readings of a strict puzzle: nobody is asked',
      mark({
        outcome: 'ambiguous',
        line: [],
        reason: { code: 'two-readings', params: { moves: ['f3e3', 'd1e1'] } },
      }),
      'Your text can be read in two ways (1 Re3, 1 Re1), and they are not worth the same.',
    ],
    [
      '[V0] an unclear verdict',
      mark({ outcome: 'unclear', line: ['d1h1'], reason: { code: 'unclear-verdict', params: {} } }),
      'The engine could not settle 1 Rh1 within its budget; the host decides.',
    ],
    [
      'an unreadable text, quoted',
      mark({ outcome: 'unreadable', line: null, reason: { code: 'unreadable', params: { text: 'Zz9' } } }),
      'No move could be read at “Zz9”.',
    ],
  ])('%s', (_, given, expected) => {
    expect(explainMark(given, HEALEY, 'en')).toBe(expected);
  });

  it('[V2] plays out the defence where there is more than a reply to tell', () => {
    const terms: PuzzleTerms = {
      ...DEFAULT_TERMS,
      fen: '4q2k/pp3p1p/6p1/3N4/8/7R/PPP2PP1/6K1 w - - 0 1',
      task: { kind: 'win' },
    };
    const given = mark({
      outcome: 'wrong',
      atMove: 1,
      line: ['d5f6'],
      reason: {
        code: 'slip',
        params: { how: 'no-win', movesLeft: null, by: ['e8e1', 'g1h2', 'e1e5'], better: [], ...NOT_SLOWER },
      },
    });
    expect(explainMark(given, terms, 'en')).toBe(
      'After 1 Nf6 Black plays 1 … Qe1+, and the win is gone. For example 1 … Qe1+ 2 Kh2 Qe5+.',
    );
  });

  it('[V3] a defence that mates, or a line that runs into stalemate, is told as such', () => {
    const draw: PuzzleTerms = {
      ...DEFAULT_TERMS,
      fen: '6k1/RQ4pp/8/8/7q/5P2/6P1/6K1 b - - 0 1',
      task: { kind: 'draw' },
    };
    const params = { movesLeft: null, better: [], ...NOT_SLOWER } as const;
    const mated = mark({
      outcome: 'wrong',
      atMove: 1,
      line: ['g7g6'],
      reason: { code: 'slip', params: { ...params, how: 'no-draw', by: ['b7g7'] } },
    });
    expect(explainMark(mated, draw, 'en')).toBe('After 1 … g6 White plays 2 Qg7#, and that is mate.');
    expect(explainMark(mated, draw, 'de')).toBe('Nach 1 … g6 spielt Weiß 2 Dg7#, und das ist matt.');
    const win: PuzzleTerms = {
      ...DEFAULT_TERMS,
      fen: '8/2P5/8/8/3r4/8/2K5/k7 w - - 0 1',
      task: { kind: 'win' },
    };
    const stale = mark({
      outcome: 'wrong',
      atMove: 1,
      line: ['c7c8q'],
      reason: { code: 'slip', params: { ...params, how: 'no-win', by: ['d4c4', 'c8c4'] } },
    });
    expect(explainMark(stale, win, 'en')).toBe(
      'After 1 c8=Q Black plays 1 … Rc4+, and the win is gone. For example 1 … Rc4+ 2 Qxc4, stalemate.',
    );
    expect(explainMark(stale, win, 'de')).toContain('Zum Beispiel 1 … Tc4+ 2 Dxc4, patt.');
  });

  it('[V5] a reply that repeats the position for the third time: the move before it is not called right', () => {
    const win: PuzzleTerms = {
      ...DEFAULT_TERMS,
      fen: '3r3k/6pp/8/6N1/2Q5/8/5PPP/6K1 w - - 0 1',
      task: { kind: 'win' },
      solverMoves: 8,
    };
    const given = mark({
      outcome: 'slipped',
      atMove: 4,
      p: 4,
      r: 8,
      line: ['g5f7', 'h8g8', 'f7g5', 'g8h8', 'g5f7', 'h8g8', 'f7g5', 'g8h8'],
      reason: {
        code: 'slip',
        params: { how: 'repetition', movesLeft: null, by: ['g8h8'], better: ['f7h6'], ...NOT_SLOWER },
      },
    });
    expect(explainMark(given, win, 'en')).toBe(
      'Your first 3 moves are right. After 4 Ng5+ Kh8 the position stands for the third time: a draw. 4 Nh6+ was the move.',
    );
    expect(explainMark(given, win, 'de')).toContain(
      'Nach 4 Sg5+ Kh8 steht die Stellung zum dritten Mal da: remis. 4 Sh6+ war der Zug.',
    );
  });

  it('[V1] tells a stalemate as what it is', () => {
    const terms: PuzzleTerms = {
      ...DEFAULT_TERMS,
      fen: '7k/8/5K2/8/8/8/6Q1/8 w - - 0 1',
      task: { kind: 'mate', moves: 1 },
    };
    const given = mark({
      outcome: 'wrong',
      atMove: 1,
      line: ['g2g6'],
      reason: {
        code: 'slip',
        params: { how: 'stalemate', movesLeft: 0, by: [], better: ['g2g7'], ...NOT_SLOWER },
      },
    });
    expect(explainMark(given, terms, 'en')).toBe('1 Qg6 is stalemate. 1 Qg7# was the move.');
    expect(explainMark(given, terms, 'de')).toBe('1 Dg6 setzt patt. 1 Dg7# war der Zug.');
  });

  it('a mark whose reason this program does not know is told by its outcome', () => {
    for (const locale of LOCALES) {
      const old = { ...slip, reason: { code: 'of-old', params: {} }, flags: [] };
      expect(explainMark(old, HEALEY, locale).length).toBeGreaterThan(10);
    }
  });
});

it('[A3] a mark that a person gave explains nothing in the program’s name', () => {
  const overruled = {
    outcome: 'solved',
    flags: ['still-winning'],
    atMove: 1,
    p: 1,
    r: 2,
    line: ['d1h1'],
    reason: { code: 'overruled', params: {} },
  } as const;
  expect(explainMark(overruled, HEALEY, 'en')).toBe('');
});
