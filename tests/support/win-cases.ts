import { readFileSync } from 'node:fs';
import { parseEpd } from '#lib/rules/epd.ts';
import type { Uci } from '#lib/rules/move.ts';
import { writeFen } from '#lib/rules/write-fen.ts';

/** A tactical win of tests/cases/wins.epd. */
export interface WinCase {
  readonly id: string;
  readonly fen: string;
  /** Moves that win, in UCI form. */
  readonly moves: readonly Uci[];
  /** Further moves said to win, in the file's own notation. */
  readonly alsoWins: readonly string[];
  /** Mate, or at least 300 centipawns: must be judged to hold at the default bounds. */
  readonly isDecided: boolean;
}

/**
 * The positions of tests/cases/wins.epd: Win at Chess 300 (a book of the 1940s, revised), IQ set 4, ECM selection,
 * endgame sets; `dm` and `ce` are from short searches of two strong programs that agree.
 */
export function winCases(): WinCase[] {
  const text = readFileSync(new URL('../cases/wins.epd', import.meta.url), 'utf8');
  return text
    .trim()
    .split('\n')
    .map((line) => {
      const read = parseEpd(line);
      if (!read.ok) throw new Error(line);
      const { position, operations } = read.value;
      const comment = (name: string): string => operations.get(name)?.[0] ?? '';
      return {
        id: comment('id'),
        fen: writeFen(position),
        moves: comment('c1').replace('bm-uci ', '').split(' '),
        alsoWins: comment('c2').replace('also wins: ', '').split(' '),
        isDecided: operations.has('dm') || Number(comment('ce')) >= 300,
      };
    });
}
