// Rule P3 over every text there is: the reading cases, with verdicts thrown by a seeded die, cut after each solver move.

import { describe, expect, it } from 'vitest';
import type { BookKey } from '#lib/book/book-row.ts';
import { verifiedFen } from '#lib/book/question.ts';
import { DEFAULT_TERMS, type PuzzleTerms, type Task } from '#lib/book/terms.ts';
import { createMarker, type Marker } from '#lib/marking/create-marker.ts';
import { readText } from '#lib/reading/read-text.ts';
import type { Reading } from '#lib/reading/reading.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { playUci, writeUci } from '#lib/rules/uci.ts';
import { JUDGED_PUZZLES } from '../cases/judged/judged-puzzles.ts';
import { readingCases } from '../support/reading-cases.ts';
import { type RuledVerdict, ruledBook } from '../support/ruled-book.ts';

/** A number from 0 to 1 that a text and a seed decide (FNV-1a, 32 bits). */
function die(text: string, seed: number): number {
  let hash = 0x811c9dc5 ^ seed;
  for (let at = 0; at < text.length; at += 1) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  hash ^= hash >>> 15;
  return (Math.imul(hash, 0x2c1b3c6d) >>> 0) / 2 ** 32;
}

function throwVerdict(key: BookKey, seed: number): RuledVerdict {
  const roll = die(`${key.position} ${key.move}`, seed);
  const isOver = die(`${key.move} ${key.position}`, seed + 1) < 0.15;
  const left = key.movesLeft ?? 0;
  if (roll > 0.75) return { verdict: roll > 0.95 ? 'unclear' : 'slips' };
  const adequate = repliesTo(key).filter((reply) => die(key.position + key.move + reply, seed + 2) < 0.6);
  if (roll > 0.6 && key.movesLeft !== null) {
    return { verdict: 'slower', mateIn: isOver ? 2 : left + 1, adequate };
  }
  return {
    verdict: 'holds',
    mateIn: key.movesLeft === null ? null : isOver ? 2 : left,
    evident: isOver,
    adequate,
  };
}

function repliesTo(key: BookKey): string[] {
  const position = parseFen(verifiedFen(key.position));
  const after = position.ok ? playUci(position.value, key.move) : null;
  return after === null ? [] : legalMoves(after).map(writeUci);
}

function pointsOf(marker: Marker, text: string): number {
  const result = marker({ text });
  if (result.kind !== 'mark') throw new Error('a thrown book has no holes');
  return result.mark.points;
}

/** Takes a move back, or offers a second one for the same place: the rule's two exceptions. */
// Of two men that "Nd2" may mean the rest of a text may pick the other (rule R2): that is no punishment for writing
// on, and the shorter text was read in the writer's favour (rule R6).
function isPicked(readings: readonly Reading[], cut: readonly Reading[]): boolean {
  return cut.length > readings.length;
}

function isExempt(readings: readonly Reading[]): boolean {
  return readings.some(({ choices, tries }) => choices.length > 0 || tries.length > 0);
}

const TASKS: readonly Task[] = [{ kind: 'mate', moves: 7 }, { kind: 'win' }, { kind: 'draw' }];
const TEXTS = [
  ...readingCases()
    .filter(({ isSetAside }) => !isSetAside)
    .map(({ fen, text }) => ({ fen, text })),
  ...JUDGED_PUZZLES.flatMap(({ file, cases }) => cases.map(({ text }) => ({ fen: String(file.fen), text }))),
];

describe('writing on', () => {
  it.each([11, 12, 13])('[P3] never costs, whatever the verdicts (seed %i)', (seed) => {
    let cuts = 0;
    const worse: string[] = [];
    for (const { fen, text } of TEXTS) {
      const position = parseFen(fen);
      if (!position.ok) throw new Error(fen);
      const { readings } = readText({ position: position.value, text });
      if (isExempt(readings)) continue;
      for (const task of TASKS) {
        const terms: PuzzleTerms = {
          ...DEFAULT_TERMS,
          fen,
          task,
          solverMoves: task.kind === 'draw' ? 3 : null,
        };
        const marker = createMarker({ terms, book: ruledBook((key) => throwVerdict(key, seed)) });
        const whole = pointsOf(marker, text);
        for (const move of readings[0]?.line ?? []) {
          if (move.by !== 'solver') continue;
          cuts += 1;
          const short = text.slice(0, move.end);
          if (isPicked(readings, readText({ position: position.value, text: short }).readings)) continue;
          const cut = pointsOf(marker, short);
          if (cut > whole) worse.push(`${task.kind} ${fen} "${text}" ${whole} < ${cut} "${short}"`);
        }
      }
    }
    expect(worse).toEqual([]);
    expect(cuts).toBeGreaterThan(1000);
  });
});
