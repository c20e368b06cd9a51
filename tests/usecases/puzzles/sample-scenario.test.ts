import { expect, test } from 'vitest';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { SAMPLE_EPISODES } from '#lib/usecases/puzzles/sample-scenario.ts';

test('three episodes, two of them over; every position is legal and every comment falls after its opening', () => {
  expect(SAMPLE_EPISODES.map((episode) => episode.closedDaysAgo === null)).toEqual([false, false, true]);
  for (const episode of SAMPLE_EPISODES) {
    const position = parseFen(episode.fen);
    expect(position.ok && legalMoves(position.value).length, episode.title).toBeGreaterThan(0);
    for (const comment of episode.comments) expect(comment.daysAgo).toBeLessThan(episode.openedDaysAgo);
  }
});
