import { describe, expect, it } from 'vitest';
import { createEngine } from '#lib/engine/create-engine.ts';
import { isSetAside, JUDGED_PUZZLES } from '../cases/judged/judged-puzzles.ts';
import { markOnDemand, openBook } from '../support/judge-answers.ts';

const engine = createEngine({ hashMiB: 16 });

describe.each(JUDGED_PUZZLES.map((puzzle) => [puzzle.name, puzzle] as const))('%s', (_, puzzle) => {
  const cases = puzzle.cases.filter((judged) => !isSetAside(judged));
  const book = cases.length > 0 ? openBook(engine, puzzle) : null;

  it.each(cases.map((judged) => [judged.rules.join(', '), judged.text, judged.why, judged] as const))(
    '[%s] "%s": %s',
    (_rules, _text, _why, judged) => {
      if (book === null) throw new Error('no book');
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
  );
});
