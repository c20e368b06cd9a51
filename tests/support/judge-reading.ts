// In what does a reading differ from what a case expects? Nothing means exactly right.

import { readText } from '#lib/reading/read-text.ts';
import type { Reading, ReadLine, ReadResult } from '#lib/reading/reading.ts';
import { summariseReadings } from '#lib/reading/summarise-readings.ts';
import { positionOf } from './positions.ts';
import type { ReadingCase } from './reading-cases.ts';

type Lines = readonly (readonly string[])[];

function written(lines: Lines): string {
  return lines
    .map((line) => line.join(' '))
    .sort()
    .join('; ');
}

function ucis(lines: readonly ReadLine[]): Lines {
  return lines.map((line) => line.map(({ uci }) => uci));
}

function hasFlag(flag: string, result: ReadResult, reading: Reading | undefined): boolean {
  switch (flag) {
    case 'typo':
      return reading?.line.some(({ isTypo }) => isTypo) === true;
    case 'generous':
      return reading?.isGenerous === true;
    case 'cut-by-source':
      return result.isCutBySource;
    case 'addressed':
      return result.isAddressed;
    case 'no-choice':
      return reading?.choices.length === 0;
    default:
      throw new Error(`No such flag: ${flag}`);
  }
}

/** One sentence a difference; empty where the text is read exactly as the case says. */
export function differencesOf(expected: ReadingCase): string[] {
  const result = readText({ position: positionOf(expected.fen), text: expected.text });
  const found = summariseReadings(result);
  const [reading] = result.readings;
  const wrong: string[] = [];
  const compare = (what: string, is: unknown, due: unknown): void => {
    if (String(is) !== String(due)) wrong.push(`${what} is ${String(is)}, not ${String(due)}`);
  };
  compare('kind', found.kind, expected.kind);
  compare('line', found.line?.join(' ') ?? null, expected.line?.join(' ') ?? null);
  compare('readings', found.readings, expected.readings);
  compare('solverOnly', found.solverOnly, expected.isSolverOnly);
  compare('impossibleAt', found.impossibleAt, expected.impossibleAt);
  compare('branches', written(found.branches), written(expected.branches));
  if (expected.tries.length > 0)
    compare('tries', written(ucis(reading?.tries ?? [])), written(expected.tries));
  if (expected.choices.length > 0) {
    compare('choices', written(ucis(reading?.choices ?? [])), written(expected.choices));
  }
  if (expected.turned.length > 0) {
    compare('turned', written(ucis(result.turned.map(({ line }) => line))), written(expected.turned));
  }
  for (const flag of expected.flags)
    if (!hasFlag(flag, result, reading))
      wrong.push(flag === 'no-choice' ? 'there is a choice' : `flag ${flag} is missing`);
  return wrong;
}
