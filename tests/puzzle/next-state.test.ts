import { describe, expect, test } from 'vitest';
import { type DeedFacts, nextState } from '#lib/puzzle/next-state.ts';

const now = new Date('2026-11-20T12:00:00Z');
const verified: DeedFacts = {
  verifiedAt: new Date('2026-11-19T10:00:00Z'),
  publishedAt: null,
  opensAt: new Date('2026-11-20T11:00:00Z'),
  closesAt: new Date('2026-11-27T18:00:00Z'),
  revealedAt: null,
  voidedAt: null,
  claim: 'true',
  failingLines: 0,
  overrideReason: null,
};
const open: DeedFacts = { ...verified, publishedAt: new Date('2026-11-20T11:30:00Z') };
const closed: DeedFacts = { ...open, closesAt: new Date('2026-11-20T11:45:00Z') };

function codeOf(facts: DeedFacts, deed: Parameters<typeof nextState>[1]): string {
  const result = nextState(facts, deed, now);
  return result.ok ? result.value : result.reason.code;
}

describe('[A5] publishing', () => {
  const rows: [string, DeedFacts, string][] = [
    ['a true claim opens at once where the opening has come', verified, 'open'],
    [
      'a true claim waits for its opening',
      { ...verified, opensAt: new Date('2026-11-21T00:00:00Z') },
      'published',
    ],
    ['a false claim is refused', { ...verified, claim: 'false' }, 'claim-false'],
    [
      'a false claim is refused even with a reason',
      { ...verified, claim: 'false', overrideReason: 'I insist' },
      'claim-false',
    ],
    ['an unclear claim needs a reason', { ...verified, claim: 'unclear' }, 'claim-unclear-without-reason'],
    [
      'blanks are no reason',
      { ...verified, claim: 'unclear', overrideReason: '  ' },
      'claim-unclear-without-reason',
    ],
    [
      'an unclear claim goes with a reason, for the log',
      { ...verified, claim: 'unclear', overrideReason: 'known study' },
      'open',
    ],
    [
      '[V9] a published line that fails its own marking holds it up',
      { ...verified, failingLines: 1 },
      'published-line-fails',
    ],
    [
      '[V9] and goes with a reason',
      { ...verified, failingLines: 1, overrideReason: 'shown as printed' },
      'open',
    ],
    ['before verification has ended', { ...verified, verifiedAt: null, claim: null }, 'not-verified'],
    ['with no close set', { ...verified, closesAt: null }, 'times-missing'],
    [
      'with a close before the opening',
      { ...verified, closesAt: new Date('2026-11-20T10:00:00Z') },
      'close-not-after-opening',
    ],
    [
      'with a close that has passed',
      { ...verified, opensAt: new Date('2026-11-19T11:00:00Z'), closesAt: now },
      'close-is-past',
    ],
    ['twice', open, 'wrong-state'],
  ];
  test.each(rows)('[A5] %s', (_why, facts, expected) => {
    expect(codeOf(facts, 'publish')).toBe(expected);
  });
});

describe('[A6] closing, revealing and making void', () => {
  const rows: [string, DeedFacts, Parameters<typeof nextState>[1], string][] = [
    ['an open puzzle closes by hand', open, 'close', 'closed'],
    ['a closed one cannot close again', closed, 'close', 'wrong-state'],
    ['an open puzzle is not revealed: answers still come', open, 'reveal', 'wrong-state'],
    ['a closed one is revealed', closed, 'reveal', 'revealed'],
    [
      'a draft cannot be void: nobody has seen it',
      { ...verified, verifiedAt: null, claim: null },
      'void',
      'wrong-state',
    ],
    ['an open puzzle can be made void', open, 'void', 'void'],
    ['so can a revealed one', { ...closed, revealedAt: now }, 'void', 'void'],
  ];
  test.each(rows)('[A6] %s', (_why, facts, deed, expected) => {
    expect(codeOf(facts, deed)).toBe(expected);
  });

  test('[A6] a refusal names the state it found and those expected', () => {
    const result = nextState(open, 'reveal', now);
    expect(result.ok ? null : result.reason).toEqual({
      code: 'wrong-state',
      state: 'open',
      expected: ['closed'],
    });
  });
});
