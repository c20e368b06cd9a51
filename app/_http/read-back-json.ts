import type { Reading, ReadLine } from '#lib/reading/reading.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { ReadBack } from '#lib/usecases/answers/read-back.ts';
import type { Locale } from '#lib/words/locale.ts';
import { lettersOf } from '../_ui/piece-letters.ts';
import { plainLine, printLine } from '../_ui/read-line.ts';

/** What was read, as data: for the board module and for programs. */
export function readBackJson({ puzzle, read, clientKey }: ReadBack, locale: Locale) {
  const start = parseFen(puzzle.fen);
  if (!start.ok) throw new Error(`not a position: ${puzzle.fen}`);
  const textOf = (line: ReadLine) => plainLine(printLine(start.value, line, lettersOf(locale)));
  const moves = (line: ReadLine) => line.map(({ uci }) => uci);
  const shown = (reading: Reading) => ({
    line: moves(reading.line),
    text: textOf(reading.line),
    isSolverOnly: reading.isSolverOnly,
    impossibleAt: reading.impossibleAt,
    branches: reading.branches.map(moves),
    choices: reading.choices.map(moves),
    tries: reading.tries.map(moves),
  });
  return {
    kind: read.kind,
    isCut: read.isCut,
    readings: read.readings.map(shown),
    turned: read.turned.map(shown),
    key: clientKey,
    // Sent back with the answer as `seen`: the terms that it was read on.
    seen: puzzle.revision,
  };
}
