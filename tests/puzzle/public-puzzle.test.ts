import { describe, expect, test } from 'vitest';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { SCHEMES } from '#lib/marking/schemes.ts';
import { type PublicPuzzleFacts, toPublicPuzzle } from '#lib/puzzle/public-puzzle.ts';

// F. Healey, Illustrated London News 1861, mate in three.
const fen = '8/1n3Np1/1N4Q1/1bkP4/p1p2p2/P1P2R2/3P2PK/B2R4 w - - 0 1';
const terms: PuzzleTerms = {
  ...DEFAULT_TERMS,
  fen,
  task: { kind: 'mate', moves: 3 },
  published: ['1.Rh1 SECRET'],
};
const facts: PublicPuzzleFacts & { notes: string } = {
  slug: 'lamplight-42',
  showName: 'The Lamplight Board',
  episodeNumber: 42,
  episodeTitle: 'Clearing the way',
  title: 'White to play and mate in three',
  howFar: 'To the mate; the last move may be left out.',
  zone: 'Europe/Berlin',
  scheme: SCHEMES['full-line'],
  terms,
  notes: 'SECRET of the desk',
  verifiedAt: new Date('2026-11-19T10:00:00Z'),
  publishedAt: new Date('2026-11-19T11:00:00Z'),
  opensAt: new Date('2026-11-20T18:00:00Z'),
  closesAt: new Date('2026-11-27T18:00:00Z'),
  revealedAt: null,
  voidedAt: null,
  revision: 1,
  corrections: [],
};

describe('[T2] the public puzzle', () => {
  test('[T2] it holds what is named and nothing else, even where the source holds more', () => {
    const shown = toPublicPuzzle(facts, new Date('2026-11-21T00:00:00Z'));
    expect(shown).not.toBeNull();
    expect(JSON.stringify(shown)).toContain('Lamplight');
    expect(JSON.stringify(shown)).not.toContain('SECRET');
    expect(Object.keys(shown ?? {}).sort()).toEqual([
      'anyDefence',
      'closesAt',
      'corrections',
      'episodeNumber',
      'episodeTitle',
      'fen',
      'howFar',
      'mateWritten',
      'opensAt',
      'points',
      'revision',
      'scheme',
      'showName',
      'slug',
      'state',
      'task',
      'title',
      'turn',
      'zone',
    ]);
  });

  test('[T2] a task with more in it than the type names is copied by name', () => {
    const task = { kind: 'mate' as const, moves: 3, key: 'SECRET' };
    const shown = toPublicPuzzle({ ...facts, terms: { ...terms, task } }, new Date('2026-11-21T00:00:00Z'));
    expect(shown?.task).toEqual({ kind: 'mate', moves: 3 });
  });

  test('[T2] before the opening, and before publication, there is no public puzzle', () => {
    expect(toPublicPuzzle(facts, new Date('2026-11-20T17:59:59Z'))).toBeNull();
    expect(toPublicPuzzle({ ...facts, publishedAt: null }, new Date('2026-11-21T00:00:00Z'))).toBeNull();
  });

  test('[T2] the state is said for the moment asked', () => {
    expect(toPublicPuzzle(facts, new Date('2026-11-27T18:00:00Z'))?.state).toBe('closed');
  });

  test('[T2] that a solution was corrected is told with the solution, not before', () => {
    const at = new Date('2026-11-22T00:00:00Z');
    const correction = {
      kind: 'amended',
      at,
      note: 'Sorry.',
      changed: ['task', 'keys'],
      from: null,
      to: null,
    } as const;
    const corrected = { ...facts, revision: 2, corrections: [{ ...correction, report: 'SECRET' }] };
    const closed = toPublicPuzzle(corrected, new Date('2026-11-28T00:00:00Z'));
    expect(closed?.corrections).toEqual([{ ...correction, changed: ['task'] }]);
    const revealed = toPublicPuzzle({ ...corrected, revealedAt: at }, new Date('2026-11-28T00:00:00Z'));
    expect(revealed?.corrections).toEqual([correction]);
    expect(JSON.stringify(revealed)).not.toContain('SECRET');
  });
});
