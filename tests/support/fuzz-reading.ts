// What can go wrong with the reading of any text at all: a throw, a bound broken, a move that is not legal.

import { readText } from '#lib/reading/read-text.ts';
import type { ReadLine } from '#lib/reading/reading.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Position } from '#lib/rules/position.ts';
import { writeUci } from '#lib/rules/uci.ts';

/** Positions followed behind gaps: few at first, as good as all before a line is called illegal. */
const FEW_POSITIONS = 200;
const MANY_POSITIONS = 60_000;

/** True if every move of the line is legal, a gap being filled by at least one reply. */
function isLegalLine(start: Position, line: ReadLine, mostPositions: number): boolean {
  let positions: Position[] = [start];
  let due: 'solver' | 'defender' = 'solver';
  for (const { uci, by } of line) {
    if (by !== due) positions = positions.flatMap((at) => legalMoves(at).map((move) => playMove(at, move)));
    positions = positions.flatMap((at) => {
      const move = legalMoves(at).find((one) => writeUci(one) === uci);
      return move === undefined ? [] : [playMove(at, move)];
    });
    if (positions.length === 0) return false;
    if (positions.length > mostPositions) positions = spread(positions, mostPositions);
    due = by === 'solver' ? 'defender' : 'solver';
  }
  return true;
}

/** A list thinned evenly, so that behind many gaps a test still ends. */
function spread(positions: readonly Position[], count: number): Position[] {
  const step = positions.length / count;
  return Array.from({ length: count }, (_, index) => positions[Math.floor(index * step)]).filter(
    (position) => position !== undefined,
  );
}

function gapsIn(line: ReadLine): number {
  return line.filter(({ by }, index) => by === 'solver' && line[index - 1]?.by === 'solver').length;
}

/** One sentence a fault of the text's reading; none is expected, ever. */
export function faultsOf(position: Position, text: string): string[] {
  const faults: string[] = [];
  const say = (fault: string): void => {
    faults.push(`${fault}: ${JSON.stringify(text.slice(0, 200))}`);
  };
  try {
    const result = readText({ position, text });
    if (result.readings.length > 1000) say('over 1,000 readings');
    if ((result.kind === 'answer') !== result.readings.length > 0) say('the kind does not fit the readings');
    for (const reading of result.readings.slice(0, 8)) {
      for (const line of [reading.line, ...reading.branches, ...reading.choices, ...reading.tries].slice(
        0,
        6,
      )) {
        // Many gaps in a row leave more positions than a test can follow.
        const isFollowed = gapsIn(line) <= 3;
        if (
          isFollowed &&
          ![FEW_POSITIONS, MANY_POSITIONS].some((most) => isLegalLine(position, line, most))
        ) {
          say(`not legal: ${line.map(({ uci }) => uci).join(' ')}`);
        }
        for (const { start, end } of line) {
          if (start < 0 || end <= start || end > text.length)
            say(`a place outside the text, ${start} to ${end}`);
        }
      }
    }
  } catch (error) {
    say(`thrown ${error instanceof Error ? error.message : String(error)}`);
  }
  return faults;
}
