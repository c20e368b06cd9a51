import { describe, expect, test } from 'vitest';
import { DEFAULT_TERMS } from '#lib/book/terms.ts';
import { parseName } from '#lib/people/names.ts';
import { checkTerms } from '#lib/usecases/puzzles/create-puzzle.ts';
import { SAMPLE_EPISODES } from '#lib/usecases/puzzles/sample-scenario.ts';

describe.each(SAMPLE_EPISODES.map((episode) => [episode.title, episode] as const))(
  '%s',
  (_title, episode) => {
    test('is a puzzle that can be set', () => {
      const task = { kind: 'mate', moves: episode.moves } as const;
      const terms = { ...DEFAULT_TERMS, fen: episode.fen, task, published: [episode.published] };
      expect(checkTerms(terms)).toMatchObject({ ok: true, value: { fen: episode.fen } });
    });

    test('opens before it closes, and every comment comes after the opening', () => {
      const { openedDaysAgo, closedDaysAgo, comments } = episode;
      expect(openedDaysAgo).toBeGreaterThan(closedDaysAgo ?? -7);
      for (const comment of comments) expect(comment.daysAgo, comment.author).toBeLessThan(openedDaysAgo);
    });

    test('has viewers with names fit for the air, each with one comment', () => {
      const names = episode.comments.map((comment) => comment.author);
      expect(new Set(names).size).toBe(names.length);
      for (const name of names) expect(parseName(name).ok, name).toBe(true);
    });
  },
);

test('tells of a late comment, of chatter and of several languages', () => {
  const comments = SAMPLE_EPISODES.flatMap(({ closedDaysAgo, comments: all }) =>
    all.map((comment) => ({ ...comment, isLate: closedDaysAgo !== null && comment.daysAgo < closedDaysAgo })),
  );
  expect(comments.filter((comment) => comment.isLate)).toHaveLength(1);
  expect(comments.some((comment) => /\p{Script=Cyrillic}/u.test(comment.text))).toBe(true);
});
