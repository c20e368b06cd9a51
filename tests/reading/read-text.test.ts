import { describe, expect, test } from 'vitest';
import { createRandom } from '#lib/kit/random.ts';
import { readText } from '#lib/reading/read-text.ts';
import type { ReadResult } from '#lib/reading/reading.ts';
import { faultsOf } from '../support/fuzz-reading.ts';
import {
  hostileText,
  mutatedText,
  randomText,
  shuffledText,
  vocabularyOf,
} from '../support/hostile-texts.ts';
import { positionOf, START_FEN } from '../support/positions.ts';
import { readingCases } from '../support/reading-cases.ts';

const TWO_ROOKS = '6k1/5ppp/8/8/8/8/5PPP/3RR1K1 w - - 0 1';

function read(text: string, fen = TWO_ROOKS): ReadResult {
  return readText({ position: positionOf(fen), text });
}

describe('bounds', () => {
  test('[R7] a text is cut at 4,000 characters and says so; what stands before the cut is read', () => {
    const long = read(`Re8# ${'thank you for the show '.repeat(300)}`);
    expect(long.isCut).toBe(true);
    expect(long.readings[0]?.line.map(({ uci }) => uci)).toEqual(['e1e8']);
    expect(read('Re8#').isCut).toBe(false);
  });

  test('[R7] not more readings than asked for are kept', () => {
    const position = positionOf('8/k7/8/8/1Q5Q/8/8/K6Q w - - 0 1');
    expect(readText({ position, text: 'Qe1' }).readings).toHaveLength(3);
    expect(readText({ position, text: 'Qe1', maxReadings: 2 }).readings).toHaveLength(2);
  });

  test('[R7] 300 random, 300 mutated, 600 shuffled and 60 hostile texts of seed 7: no throw, all bounds kept, every move legal', () => {
    const random = createRandom(7);
    const cases = readingCases();
    const vocabulary = vocabularyOf(cases.map(({ text }) => text));
    const texts = [
      ...Array.from({ length: 300 }, () => ({ fen: random.pick(cases).fen, text: randomText(random) })),
      ...Array.from({ length: 300 }, () => {
        const { fen, text } = random.pick(cases);
        return { fen, text: mutatedText(random, text) };
      }),
      ...Array.from({ length: 600 }, () => ({
        fen: random.pick(cases).fen,
        text: shuffledText(random, vocabulary),
      })),
      ...Array.from({ length: 60 }, () => ({ fen: START_FEN, text: hostileText(random) })),
    ];
    expect(texts.flatMap(({ fen, text }) => faultsOf(positionOf(fen), text))).toEqual([]);
  });
});

describe('order and places', () => {
  test('[R6] readings stand in the order of their moves, whatever they are worth', () => {
    const mates = read('rook to the eighth rank, mate').readings.map(({ line }) => line[0]?.uci);
    expect(mates).toEqual(['d1d8', 'e1e8']);
  });

  test('[R8] the place of a move is told in the text as it was sent, markup and styled letters included', () => {
    const text = 'Hi <b>there</b>: 𝐑𝐞𝟖&#35; !';
    const [move] = read(text).readings[0]?.line ?? [];
    expect(text.slice(move?.start, move?.end)).toBe('𝐑𝐞𝟖&#35;');
  });

  test('[A4] the same text is read the same way twice', () => {
    const text = '1.Rd7? (Kf8) no: Re8# or Rd8';
    expect(read(text)).toEqual(read(text));
  });
});

describe('kinds of text', () => {
  test('[P4] a text that begins by addressing somebody says so and is still read', () => {
    const answer = read('@ann it is Re8#');
    expect(answer.isAddressed).toBe(true);
    expect(answer.kind).toBe('answer');
    expect(read('same as Ann').kind).toBe('chatter');
  });

  test('[R14] a turned board is looked at only if nothing is legal as written', () => {
    const fen = '6k1/5ppp/8/8/8/8/8/R3K3 w - - 0 1';
    expect(read('Rh1#', fen).turned.map(({ line }) => line.map(({ uci }) => uci))).toEqual([['a1a8']]);
    expect(read('Ra8#', fen).turned).toEqual([]);
    expect(read('Ra2 Kh8 Rh1', fen).turned).toEqual([]);
  });

  test('[R14] an English rook that only an Icelandic knight could be does not hide a turned board', () => {
    // Healey 1861; 1.Rh1 Bd7 2.Qb1 seen from Black's side. Only the knight b6 can reach a8.
    const healey = '8/1n3Np1/1N4Q1/1bkP4/p1p2p2/P1P2R2/3P2PK/B2R4 w - - 0 1';
    const answer = read('I think Ra8 and if Be2 then Qg8', healey);
    expect(answer.turned.map(({ line }) => line.map(({ uci }) => uci))).toEqual([['d1h1', 'b5d7', 'g6b1']]);
    expect(answer.readings.map(({ line, impossibleAt }) => [line.length, impossibleAt])).toEqual([[0, 1]]);
    expect(read('Ra8', healey).turned).toEqual([]);
  });

  test('[R14] one move fits a turned board by chance: numbered "1..." for Black it is simply illegal', () => {
    const blackToMove = '5rk1/5ppp/8/8/8/1q6/1r3PPP/3R2K1 b - - 0 1';
    const turnedLines = (text: string): string[][] =>
      read(text, blackToMove).turned.map(({ line }) => line.map(({ uci }) => uci));
    expect(turnedLines('1...c4')).toEqual([]);
    expect(turnedLines('1. ... Rg8')).toEqual([]);
    expect(turnedLines('Rg8')).toEqual([['b2b1']]);
    expect(turnedLines('1.Rg8')).toEqual([['b2b1']]);
    expect(turnedLines('Rg8 Qxz9')).toEqual([]);
    expect(turnedLines('1...Rg8 2.Rxg8 Qxg8#')).toEqual([['b2b1', 'd1b1', 'b3b1']]);
  });

  test('[R16] a source’s cut mark at the end is told apart from dots in the middle', () => {
    expect(read('Re8# … Read more').isCutBySource).toBe(true);
    expect(read('well ... Re8#').isCutBySource).toBe(false);
  });

  test('[O0] what looks like a move and is none has a place; chatter has none', () => {
    const broken = read('I say Yd8# here');
    expect(broken.kind).toBe('unreadable');
    expect('I say Yd8# here'.slice(...(broken.firstUnread ?? [0, 0]))).toContain('Yd8');
    expect(read('good evening').firstUnread).toBeNull();
    for (const text of ['1.Qxz9', '1... Rj10 and mate', 'Txz9 matt', 'rook to j8']) {
      const { kind, firstUnread } = read(text);
      expect(`${kind}: ${text.slice(...(firstUnread ?? [0, 0]))}`).toMatch(
        /^unreadable: (Qx|Rj|Tx|j)\d?z?\d+$/,
      );
    }
    for (const text of ['Chapter B9', 'I use Windows 11', 'On channel 4. Z9 rocks', '1) Vitamin B12']) {
      expect(`${text} is ${read(text).kind}`).toBe(`${text} is chatter`);
    }
  });
});
