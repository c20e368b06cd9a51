import { describe, expect, it } from 'vitest';
import { createEngine } from '#lib/engine/create-engine.ts';
import { isSetAside, JUDGED_PUZZLES } from '../cases/judged/judged-puzzles.ts';
import { type JudgedBook, markOnDemand, openBook } from '../support/judge-answers.ts';

const engine = createEngine({ hashMiB: 16 });

/** The first run on a machine also builds the endgame tables that the puzzles need. */
const MOST_MS = 240_000;

const puzzles = JUDGED_PUZZLES.map((puzzle) => ({
  puzzle,
  cases: puzzle.cases.filter((judged) => !isSetAside(judged)),
})).filter(({ cases }) => cases.length > 0);

describe.each(puzzles.map(({ puzzle, cases }) => [puzzle.name, puzzle, cases] as const))(
  '%s',
  (_, puzzle, cases) => {
    let book: JudgedBook | null = null;

    it.each(cases.map((judged) => [judged.rules.join(', '), judged.text, judged.why, judged] as const))(
      '[%s] "%s": %s',
      (_rules, _text, _why, judged) => {
        book ??= openBook(engine, puzzle);
        const { outcome, atMove, flags, p, r, points } = markOnDemand(engine, book, judged);
        expect({ outcome, atMove, flags: [...flags].sort(), p, r, points }).toEqual({
          outcome: judged.outcome,
          atMove: judged.at ?? null,
          flags: [...(judged.flags ?? [])].sort(),
          p: judged.p,
          r: judged.r,
          points: judged.points,
        });
      },
      MOST_MS,
    );
  },
);
