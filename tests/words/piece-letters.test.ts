import { describe, expect, test } from 'vitest';
import { KINDS } from '#lib/rules/position.ts';
import { FIGURINES, PIECE_LETTERS, pieceLettersOf } from '#lib/words/piece-letters.ts';

/** Pawn, knight, bishop, rook, queen, king; the language table of the PGN standard (1994), from its text. */
const PUBLISHED: Readonly<Record<string, string>> = {
  Czech: 'PJSVDK',
  Danish: 'BSLTDK',
  Dutch: 'OPLTDK',
  English: 'PNBRQK',
  Estonian: 'PROVLK',
  Finnish: 'PRLTDK',
  French: 'PCFTDR',
  German: 'BSLTDK',
  Hungarian: 'GHFBVK',
  Icelandic: 'PRBHDK',
  Italian: 'PCATDR',
  Norwegian: 'BSLTDK',
  Polish: 'PSGWHK',
  Portuguese: 'PCBTDR',
  Romanian: 'PCNTDR',
  Spanish: 'PCATDR',
  Swedish: 'BSLTDK',
};

describe('letters of the men', () => {
  test('[R1] the 17 tables of the PGN standard stand as published', () => {
    const ours = PIECE_LETTERS.filter(({ source }) => source === 'pgn').map(
      ({ name, letters }): [string, string] => [name, KINDS.map((kind) => letters[kind][0]).join('')],
    );
    expect(Object.fromEntries(ours)).toEqual(PUBLISHED);
  });

  test('[R1] English comes first, every table has a letter for every kind, and no tag occurs twice', () => {
    expect(PIECE_LETTERS[0]?.tag).toBe('en');
    for (const { name, letters } of PIECE_LETTERS) {
      for (const kind of KINDS) expect([name, kind, letters[kind].length > 0]).toEqual([name, kind, true]);
    }
    expect(new Set(PIECE_LETTERS.map(({ tag }) => tag)).size).toBe(PIECE_LETTERS.length);
  });

  test('[R1] within one table no letter stands for two kinds', () => {
    for (const { name, letters } of PIECE_LETTERS) {
      const signs = KINDS.flatMap((kind) => letters[kind]);
      expect([name, new Set(signs).size]).toEqual([name, signs.length]);
    }
  });

  test('[R1] there are twelve figurines', () => {
    expect(new Set(KINDS.flatMap((kind) => FIGURINES[kind])).size).toBe(12);
  });

  test('[R1] an unknown language gets English letters', () => {
    expect(pieceLettersOf('xx').tag).toBe('en');
    expect(pieceLettersOf('de').letters.n).toEqual(['S']);
  });
});
