import { describe, expect, test } from 'vitest';
import { explainReading } from '#lib/reading/explain-reading.ts';
import { readText } from '#lib/reading/read-text.ts';
import { positionOf } from '../support/positions.ts';
import { readingCases } from '../support/reading-cases.ts';

function explained(fen: string, text: string): [string, string, string | null][] {
  const [reading] = readText({ position: positionOf(fen), text }).readings;
  if (reading === undefined) throw new Error(`No reading of ${text}`);
  return explainReading(text, reading)
    .filter(({ role }) => role !== 'text')
    .map((stretch) => [stretch.text, stretch.role, stretch.uci]);
}

describe('which characters became which move', () => {
  test('[R8] main line, branch and prose are told apart', () => {
    const fen = 'r1bqk1nr/pppp1ppp/2n5/2b1p3/2B1P3/5N2/PPPP1PPP/RNBQK2R w KQkq - 4 4';
    expect(explained(fen, '1.Bxf7+ Kxf7 (1...Kf8 2.Bxg8) 2.Nxe5+ nice')).toEqual([
      ['Bxf7+', 'line', 'c4f7'],
      ['Kxf7', 'line', 'e8f7'],
      ['Kf8', 'branch', 'e8f8'],
      ['Bxg8', 'branch', 'f7g8'],
      ['Nxe5+', 'line', 'f3e5'],
    ]);
  });

  test('[R10] a move turned down is a try, a move that cannot be played is shown as such', () => {
    const fen = '6k1/5ppp/8/8/8/8/5PPP/3RR1K1 w - - 0 1';
    expect(explained(fen, 'Rd7? no: Re8# Kf9')).toEqual([
      ['Rd7?', 'try', 'd1d7'],
      ['Re8#', 'line', 'e1e8'],
      ['Kf9', 'impossible', null],
    ]);
  });

  test('[R8] the stretches in a row are the text, for every case', () => {
    for (const { fen, text } of readingCases()) {
      for (const reading of readText({ position: positionOf(fen), text }).readings) {
        const stretches = explainReading(text, reading);
        expect(stretches.map((stretch) => stretch.text).join('')).toBe(text);
      }
    }
  });
});
