// The published mates of tests/cases/mates.epd as data.

import { readCaseLines } from './read-cases.ts';

export interface MateCase {
  readonly id: string;
  readonly fen: string;
  readonly moves: number;
  /** All keys in UCI form, sorted. For long.*: those that are known. */
  readonly keys: readonly string[];
  readonly isUnique: boolean;
  readonly source: string;
}

/** All entries in the order of the file. Composed positions carry no clock: it is 0. */
export function mateCases(): MateCase[] {
  return readCaseLines('mates.epd').map((line) => {
    const field = (pattern: RegExp) => pattern.exec(line)?.[1] ?? '';
    return {
      id: field(/ id "([^"]*)"/),
      fen: `${line.split(' ').slice(0, 4).join(' ')} 0 1`,
      moves: Number(field(/ dm (\d+);/)),
      keys: field(/ c1 "keys-uci ([^"]*)"/)
        .split(' ')
        .sort(),
      isUnique: field(/ c2 "([^"]*)"/) === 'unique key',
      source: field(/ c0 "([^"]*)"/),
    };
  });
}
