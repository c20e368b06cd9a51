import { describe, expect, test } from 'vitest';
import type { SheetName } from '#lib/readout/order-names.ts';
import { countWords } from '#lib/readout/reading-time.ts';
import { type SheetFacts, type SheetLength, sheetText, writeSheet } from '#lib/readout/write-sheet.ts';

function names(count: number): SheetName[] {
  return Array.from({ length: count }, (_, place) => ({
    solverId: place + 1,
    name: `Solver Number${place + 1}`,
    things: place < 3 ? [{ code: 'first-time' as const }] : [],
    readOutAgo: null,
    looksLike: null,
  }));
}

// F. Healey, Illustrated London News 1861, mate in three; key 1.Rh1.
const healey: SheetFacts = {
  fen: '8/1n3Np1/1N4Q1/1bkP4/p1p2p2/P1P2R2/3P2PK/B2R4 w - - 0 1',
  task: { kind: 'mate', moves: 3 },
  line: ['d1h1', 'b5d7', 'g6b1', 'b7d6', 'b1b4'],
  people: 617,
  solved: 204,
  trap: { move: 'g6b1', people: 150, by: 'b7d8' },
  otherWays: [],
  names: names(40),
};

function part(
  facts: SheetFacts,
  kind: string,
  locale: 'en' | 'de' = 'en',
  length: SheetLength = 60,
): string | undefined {
  const found = writeSheet(facts, { locale, length }).parts.find((one) => one.kind === kind);
  return found && `${found.lead} ${found.text}`.trim();
}

describe('[S3] the parts of the sheet', () => {
  test('[S3] they stand in the order recall, answer, how you did, the trap, and the end comes last', () => {
    const sheet = writeSheet(healey, { locale: 'en', length: 60 });
    expect(sheet.parts.map((one) => one.kind)).toEqual(['recall', 'answer', 'how-you-did', 'trap']);
    const text = sheetText(sheet);
    const places = ['mate in three', 'h1.', 'six hundred', 'tried', 'Solver Number1', 'this week'].map(
      (words) => text.indexOf(words),
    );
    expect(places.every((place) => place >= 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
  });

  test('[S3] the answer is said in words, at most 25 of them, the key first', () => {
    for (const locale of ['en', 'de'] as const) {
      const answer = part(healey, 'answer', locale) ?? '';
      expect(countWords(answer)).toBeLessThanOrEqual(25);
      expect(answer).toContain('h1');
      expect(answer).toContain('b1');
    }
  });

  test('[S3] people are said in round figures, shares in words', () => {
    expect(part(healey, 'how-you-did')).toBe('About six hundred of you answered; one in three was right.');
    expect(part({ ...healey, people: 7, solved: 3 }, 'how-you-did')).toBe(
      'Seven of you answered; three were right.',
    );
    expect(part({ ...healey, people: 1, solved: 1 }, 'how-you-did')).toBe(
      'One of you answered; one was right.',
    );
    expect(part({ ...healey, people: 0, solved: 0 }, 'how-you-did')).toBe('Nobody answered this time.');
  });

  test('[S3] the trap names the most popular wrong move and why it fails', () => {
    const trap = part(healey, 'trap') ?? '';
    expect(trap).toMatch(/^Many tried queen .*b1: knight .*d8, and there is no mate/);
    expect(part({ ...healey, trap: null }, 'trap')).toBeUndefined();
    expect(part({ ...healey, trap: { move: 'g6b1', people: 1, by: null } }, 'trap')).toMatch(
      /^One of you tried/,
    );
  });

  test('[S3] other ways that work are said with how many found them', () => {
    const facts = { ...healey, otherWays: [{ move: 'g6d6', people: 12 }] };
    expect(part(facts, 'other-ways', 'en', 90)).toMatch(/queen .*d6.*found by twelve/);
  });
});

describe('[S3] the dial', () => {
  const lengths: SheetLength[] = [30, 60, 90];
  test.each(lengths)('[S3] %i seconds: as many names as fit, and the estimate keeps to it', (length) => {
    const sheet = writeSheet(healey, { locale: 'en', length });
    expect(sheet.names.length).toBeGreaterThanOrEqual(3);
    expect(sheet.names.length + sheet.unread).toBe(40);
    if (length > 30) expect(sheet.seconds).toBeLessThanOrEqual(length);
  });

  test('[S3] a longer dial reads more names, a slower voice fewer', () => {
    const count = (length: SheetLength, wordsAMinute: number): number =>
      writeSheet(healey, { locale: 'en', length, wordsAMinute }).names.length;
    expect(count(90, 150)).toBeGreaterThan(count(60, 150));
    expect(count(90, 110)).toBeLessThan(count(90, 150));
  });

  test('[S3] the short sheet leaves the trap away rather than a name', () => {
    const sheet = writeSheet(healey, { locale: 'en', length: 30, wordsAMinute: 110 });
    expect(sheet.parts.map((one) => one.kind)).not.toContain('trap');
    expect(sheet.names).toHaveLength(3);
  });

  test('[S3] nobody solved it: no names, and the end says nothing of a roll', () => {
    const sheet = writeSheet({ ...healey, solved: 0, names: [] }, { locale: 'en', length: 60 });
    expect(sheet.names).toEqual([]);
    expect(sheet.over.text).not.toContain('roll');
  });
});

describe('[S3] numbers as words', () => {
  const rows: [number, string, string][] = [
    [16, 'sixteen', 'sechzehn'],
    [21, 'twenty', 'zwanzig'],
    [150, 'one hundred and fifty', 'einhundertfünfzig'],
    [1000, 'one thousand', 'eintausend'],
    [20_000, 'twenty thousand', 'zwanzigtausend'],
  ];
  test.each(rows)('[S3] %i people: "%s", "%s"', (people, en, de) => {
    const facts = { ...healey, people, solved: 0 };
    expect(part(facts, 'how-you-did', 'en')?.toLowerCase()).toContain(en);
    expect(part(facts, 'how-you-did', 'de')?.toLowerCase()).toContain(de);
  });
});

test('[S3] one who is only put right is no solver of this puzzle: the others are still spoken of', () => {
  const [first, second, third] = names(3).map((one) => ({ ...one, things: [] }));
  if (first === undefined || second === undefined || third === undefined) throw new Error('three names');
  const putRight = { ...third, things: [{ code: 'put-right' as const }], isSolver: false };
  const of = (solved: number) =>
    writeSheet({ ...healey, solved, names: [first, second, putRight] }, { locale: 'en', length: 90 });
  expect(of(3).names.map((one) => one.solverId)).toEqual([3, 1, 2]);
  expect(of(3).over).not.toEqual(of(2).over);
});
