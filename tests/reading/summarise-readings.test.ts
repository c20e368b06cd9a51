import { expect, test } from 'vitest';
import { readText } from '#lib/reading/read-text.ts';
import { type ReadingSummary, summariseReadings } from '#lib/reading/summarise-readings.ts';
import { positionOf } from '../support/positions.ts';

const TWO_KNIGHTS = '4k3/8/8/8/8/5N2/8/1N2K3 w - - 0 1';

function summary(fen: string, text: string): ReadingSummary {
  return summariseReadings(readText({ position: positionOf(fen), text }));
}

test('[R6] the line is the longest beginning that all readings share', () => {
  expect(summary(TWO_KNIGHTS, 'Kf2 Kf8 Nd2')).toMatchObject({ line: ['e1f2', 'e8f8'], readings: 2 });
  expect(summary(TWO_KNIGHTS, 'Nd2')).toMatchObject({ line: [], readings: 2, kind: 'answer' });
});

test('[R2] one reading gives its whole line', () => {
  expect(summary(TWO_KNIGHTS, 'Nbd2 Kd7 Ne5+')).toMatchObject({
    line: ['b1d2', 'e8d7', 'f3e5'],
    readings: 1,
  });
});

test('[O0] no reading gives null, not an empty line', () => {
  expect(summary(TWO_KNIGHTS, 'good evening')).toEqual({
    line: null,
    branches: [],
    readings: 0,
    solverOnly: false,
    impossibleAt: null,
    kind: 'chatter',
  });
});

test('[R4] solver-only and the ply that cannot be played are told only where all readings agree', () => {
  expect(summary(TWO_KNIGHTS, 'Kf2 and Kg3')).toMatchObject({ line: ['e1f2', 'f2g3'], solverOnly: true });
  expect(summary(TWO_KNIGHTS, 'Kf2 Kf8 Kh8')).toMatchObject({ line: ['e1f2', 'e8f8'], impossibleAt: 3 });
});
