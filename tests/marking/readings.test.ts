// Several readings, the host's rulings, cut and turned texts: rules R6, R8, R12, R14, R16, V8.

import { describe, expect, it } from 'vitest';
import { createBook } from '#lib/book/solution-book.ts';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { type AnswerToMark, createMarker } from '#lib/marking/create-marker.ts';
import type { Mark } from '#lib/marking/mark.ts';
import type { Reading, ReadLine, ReadResult } from '#lib/reading/reading.ts';
import { type RuledVerdict, ruledBook, toRow } from '../support/ruled-book.ts';

/** Two knights and two rooks, so that one text can mean two moves. */
const terms: PuzzleTerms = {
  ...DEFAULT_TERMS,
  fen: '4k3/8/8/8/8/5N2/8/RN2K2R w - - 0 1',
  task: { kind: 'win' },
};

function lineOf(moves: string): ReadLine {
  return moves
    .split(' ')
    .filter((uci) => uci !== '')
    .map((uci, at) => ({
      uci,
      by: at % 2 === 0 ? 'solver' : 'defender',
      start: 2 * at,
      end: 2 * at + 1,
      isTypo: false,
    }));
}

function reading(moves: string, more: Partial<Reading> = {}): Reading {
  return {
    line: lineOf(moves),
    branches: [],
    choices: [],
    tries: [],
    impossibleAt: null,
    impossibleSpan: null,
    isSolverOnly: false,
    isGenerous: false,
    ...more,
  };
}

function result(readings: readonly Reading[], more: Partial<ReadResult> = {}): ReadResult {
  return {
    kind: 'answer',
    readings,
    isCut: false,
    isCutBySource: false,
    isAddressed: false,
    turned: [],
    firstUnread: null,
    readerVersion: 0,
    ...more,
  };
}

const VERDICTS: Readonly<Record<string, RuledVerdict>> = {
  b1d2: { verdict: 'holds', evident: true },
  f3d2: { verdict: 'slips' },
  a1a8: { verdict: 'holds', evident: true },
  h1h8: { verdict: 'slips' },
  e1f1: { verdict: 'holds', evident: false },
};
const book = ruledBook(({ move }) => VERDICTS[move] ?? { verdict: 'slips' });

function markOf(readings: readonly Reading[], more: Partial<AnswerToMark> = {}, isStrict = false): Mark {
  const marker = createMarker({ terms: { ...terms, isStrict }, book });
  const marked = marker({ text: 'Nd2', read: result(readings), ...more });
  if (marked.kind !== 'mark') throw new Error('lacking');
  return marked.mark;
}

describe('several readings', () => {
  it('[R6] two men of the same kind are joined in favour of the writer', () => {
    const mark = markOf([reading('f3d2'), reading('b1d2')]);
    expect([mark.outcome, mark.flags, mark.line]).toEqual(['solved', ['generous'], ['b1d2']]);
  });

  it('[R6] the order of the readings makes no difference', () => {
    expect(markOf([reading('b1d2'), reading('f3d2')])).toEqual(markOf([reading('f3d2'), reading('b1d2')]));
  });

  it('[R6] different squares are never chosen between: the host is asked', () => {
    const mark = markOf([reading('a1a8'), reading('h1h8')]);
    expect([mark.outcome, mark.reason.code, mark.p, mark.points]).toEqual(['unclear', 'two-readings', 0, 0]);
    expect(mark.reason.params.moves).toEqual(['a1a8', 'h1h8']);
  });

  it('[R6] nor different kinds of men to one square', () => {
    expect(markOf([reading('b1d2'), reading('e1d2')]).outcome).toBe('unclear');
  });

  it('[R6] the same mark for all: the first is taken and nobody is asked', () => {
    const mark = markOf([reading('a1a8'), reading('b1d2')]);
    expect([mark.outcome, mark.flags, mark.line]).toEqual(['solved', [], ['a1a8']]);
  });

  it('[R6] a strict puzzle joins nothing', () => {
    const mark = markOf([reading('f3d2'), reading('b1d2')], {}, true);
    expect([mark.outcome, mark.points]).toEqual(['ambiguous', 0]);
  });

  it('[P1] the p of an ambiguous answer is that of the common beginning', () => {
    const readings = [reading('e1f1 e8e7 f3d2'), reading('e1f1 e8e7 b1d2')];
    expect(markOf(readings, {}, true)).toMatchObject({ outcome: 'ambiguous', p: 1, r: 2, points: 2 });
  });

  it('[R8] the line that the writer chose counts, and it alone', () => {
    const mark = markOf([reading('f3d2'), reading('b1d2')], { meant: ['f3d2'] });
    expect([mark.outcome, mark.flags]).toEqual(['wrong', []]);
    expect(markOf([reading('a1a8'), reading('h1h8')], { meant: ['a1a8'] }).outcome).toBe('solved');
  });

  it('[R8] a chosen line that the text does not have is left out of account', () => {
    expect(markOf([reading('b1d2')], { meant: ['h1h8'] }).outcome).toBe('solved');
  });
});

describe('what the reader says beside the moves', () => {
  it('[R12] a reply that was read as a gap is flagged generous', () => {
    expect(markOf([reading('b1d2', { isGenerous: true })]).flags).toEqual(['generous']);
  });

  it('[R16] a text cut off where it came from is flagged, so that an unfinished one can be looked at', () => {
    const cut = markOf([], { read: result([reading('e1f1')], { isCutBySource: true }) });
    expect([cut.outcome, cut.flags]).toEqual(['unfinished', ['cut-by-source']]);
  });

  it('[R14] a board that may be turned waits for the host, whose word settles it', () => {
    const read = result([], { kind: 'unreadable', turned: [reading('b1d2')] });
    expect(markOf([], { read }).reason.code).toBe('board-turned');
    expect(markOf([], { read, isTurned: true }).outcome).toBe('solved');
    expect(markOf([], { read, isTurned: false }).reason.code).toBe('unreadable');
    expect(markOf([], { read, meant: ['b1d2'] }).outcome).toBe('solved');
  });

  it('an unreadable text is quoted where it went wrong', () => {
    const read = result([], { kind: 'unreadable', firstUnread: [4, 7] });
    expect(markOf([], { read, text: 'abc Zz9 def' }).reason).toEqual({
      code: 'unreadable',
      params: { text: 'Zz9' },
    });
  });
});

describe('branches', () => {
  it('[P3, O4] a branch keeps what the book knows of it, though the move behind is not verified', () => {
    const known = ruledBook(({ move }) =>
      move === 'a1a8'
        ? null
        : move === 'b1d2'
          ? { verdict: 'holds', evident: false }
          : (VERDICTS[move] ?? null),
    );
    const marker = createMarker({ terms: { ...terms, solverMoves: 3 }, book: known });
    const pointsOf = (branch: string) => {
      const read = result([reading('e1f1 e8e7', { branches: [lineOf(branch)] })]);
      const marked = marker({ text: '', read });
      if (marked.kind !== 'mark') throw new Error('lacking');
      return [marked.mark.outcome, marked.mark.p, marked.mark.points];
    };
    const cut = pointsOf('e1f1 e8f8 b1d2');
    expect(cut).toEqual(['unfinished', 2, 3]);
    expect(pointsOf('e1f1 e8f8 b1d2 f8e8 a1a8')).toEqual(cut);
  });
});

describe('past the end', () => {
  it('[O3] a reply left out there is filled in the writer’s favour: no flag for a move that some reply allows', () => {
    const gap = lineOf('b1d2 h1h7').map((move) => ({ ...move, by: 'solver' as const }));
    const flagsWhere = (slipsAfter: (position: string) => boolean) => {
      const rule = ruledBook(({ move, position }) =>
        move === 'h1h7' ? { verdict: slipsAfter(position) ? 'slips' : 'holds' } : (VERDICTS[move] ?? null),
      );
      const marked = createMarker({ terms, book: rule })({
        text: '',
        read: result([{ ...reading(''), line: gap }]),
      });
      if (marked.kind !== 'mark') throw new Error('lacking');
      expect(marked.mark.outcome).toBe('solved');
      return marked.mark.flags;
    };
    expect(flagsWhere((position) => !position.startsWith('5k2'))).toEqual([]);
    expect(flagsWhere(() => true)).toEqual(['past-the-end']);
  });
});

describe('rulings', () => {
  const place = { position: '4k3/8/8/8/8/5N2/8/RN2K2R w - -', movesLeft: null, move: 'e1f1' };

  function outcomeWith(stands: 'unclear' | 'slips', verdict: 'holds' | 'slips'): readonly [string, number] {
    const ruled = createBook(
      [toRow(place, { verdict: stands })],
      [{ ...place, verdict, reason: 'own analysis' }],
    );
    const marked = createMarker({ terms, book: ruled })({ text: '', read: result([reading('e1f1')]) });
    if (marked.kind !== 'mark') throw new Error('lacking');
    return [marked.mark.outcome, marked.mark.p];
  }

  it('[V8] a move ruled on counts so for every answer that passes there', () => {
    expect(outcomeWith('unclear', 'holds')).toEqual(['unfinished', 1]);
    expect(outcomeWith('unclear', 'slips')).toEqual(['wrong', 0]);
  });

  it('[V8] a verdict that is settled is not ruled on', () => {
    expect(outcomeWith('slips', 'holds')).toEqual(['wrong', 0]);
  });
});
