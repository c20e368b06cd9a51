// A revealed puzzle with one wrong answer and its receipt: what a second look is asked about.

import { db } from '#lib/store/client.ts';
import { askSecondLook } from '#lib/usecases/answers/ask-second-look.ts';
import { buildShow } from './build-show.ts';
import { buildHealey, markEverything, revealNow, send } from './build-solution.ts';
import { accepted } from './positions.ts';

/** Healey's problem, revealed, with a wrong answer; its book marks `1.Qd6+` as failing to Nxd6. */
export async function buildRevealed(text = '1.Qd6+') {
  const { memberId, ...place } = await buildShow();
  const puzzle = await buildHealey({ place });
  const sent = await send(puzzle.slug, text, { name: 'Cy' });
  await markEverything(puzzle.puzzleId, puzzle.terms);
  await revealNow(puzzle.puzzleId);
  return { ...puzzle, memberId, answerId: sent.answerId, token: sent.token };
}

/** The same, and the second look is asked for. */
export async function buildLook(words = 'The knight is pinned.') {
  const revealed = await buildRevealed();
  accepted(await askSecondLook({ token: revealed.token, words }));
  return revealed;
}

/** The look of an answer as it lies in the database. */
export function lookOf(answerId: number) {
  return db().secondLook.findUnique({ where: { answerId } });
}
