import { expect, test } from 'vitest';
import { type PuzzleMoments, stateAt } from '#lib/puzzle/puzzle-state.ts';

const at = (text: string): Date => new Date(text);
const bare: PuzzleMoments = {
  verifiedAt: null,
  publishedAt: null,
  opensAt: at('2026-11-20T18:00:00Z'),
  closesAt: at('2026-11-27T18:00:00Z'),
  revealedAt: null,
  voidedAt: null,
};
const published = {
  ...bare,
  verifiedAt: at('2026-11-19T10:00:00Z'),
  publishedAt: at('2026-11-19T11:00:00Z'),
};

const rows: [string, PuzzleMoments, string, string][] = [
  ['nothing done yet, although its opening has passed', bare, '2026-11-21T00:00:00Z', 'draft'],
  [
    'verified and not published, although its opening has passed',
    { ...bare, verifiedAt: bare.opensAt },
    '2026-11-21T00:00:00Z',
    'verified',
  ],
  ['published, its opening ahead', published, '2026-11-20T17:59:59.999Z', 'published'],
  ['published, at its opening', published, '2026-11-20T18:00:00Z', 'open'],
  ['one millisecond before the close', published, '2026-11-27T17:59:59.999Z', 'open'],
  ['at the close, with no job having run', published, '2026-11-27T18:00:00Z', 'closed'],
  ['revealed', { ...published, revealedAt: at('2026-11-28T00:00:00Z') }, '2026-11-28T00:00:01Z', 'revealed'],
  [
    'made void after the reveal',
    { ...published, revealedAt: at('2026-11-28T00:00:00Z'), voidedAt: at('2026-11-29T00:00:00Z') },
    '2026-11-30T00:00:00Z',
    'void',
  ],
];

test.each(rows)('[P2] the state follows from the times: %s', (_why, puzzle, now, expected) => {
  expect(stateAt(puzzle, at(now))).toBe(expected);
});
