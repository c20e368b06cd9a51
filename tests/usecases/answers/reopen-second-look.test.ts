import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { overruleMark } from '#lib/usecases/answers/overrule-mark.ts';
import { reopenSecondLook } from '#lib/usecases/answers/reopen-second-look.ts';
import { settleSecondLook } from '#lib/usecases/answers/settle-second-look.ts';
import { buildLook, lookOf } from '../../support/build-look.ts';
import { givenDatabase } from '../../support/database.ts';
import { accepted, refused } from '../../support/positions.ts';

givenDatabase();

async function settled(outcome: 'solved' | null) {
  const look = await buildLook();
  const { puzzleId, answerId, memberId } = look;
  const word = { puzzleId, answerId, memberId, outcome, points: null, reply: 'so', why: 'x' };
  accepted(await settleSecondLook(word));
  return look;
}

test('[A2, A3] a slip of the key is taken back: the look waits again, the former mark is in force as a new row', async () => {
  const { puzzleId, answerId, memberId } = await settled('solved');
  accepted(await reopenSecondLook({ puzzleId, answerId, memberId }));
  expect(await lookOf(answerId)).toMatchObject({
    settledAt: null,
    result: null,
    reply: null,
    memberId: null,
  });
  const marks = await db().mark.findMany({ where: { answerId }, orderBy: { id: 'asc' } });
  expect(marks.map((mark) => [mark.outcome, mark.madeBy, mark.isCurrent])).toEqual([
    ['wrong', 'program', false],
    ['solved', 'person', false],
    ['wrong', 'program', true],
  ]);
  expect(await db().log.count({ where: { kind: 'look-reopened', answerId, memberId } })).toBe(1);
});

test('[A2] where the mark stood, only the look comes back', async () => {
  const { puzzleId, answerId, memberId } = await settled(null);
  accepted(await reopenSecondLook({ puzzleId, answerId, memberId }));
  expect(await db().mark.count({ where: { answerId } })).toBe(1);
  expect((await lookOf(answerId))?.settledAt).toBeNull();
});

test('[A3] a later overrule stays, and nobody takes back what another member said', async () => {
  const { puzzleId, answerId, memberId, showId } = await settled('solved');
  const other = await db().member.create({
    data: { showId, signInName: `helper${showId}`, passwordHash: 'none', role: 'helper' },
  });
  expect(refused(await reopenSecondLook({ puzzleId, answerId, memberId: other.id }))).toEqual({
    code: 'nothing-to-undo',
  });
  accepted(
    await overruleMark({ answerId, outcome: 'slower', points: null, why: 'later', memberId: other.id }),
  );
  accepted(await reopenSecondLook({ puzzleId, answerId, memberId }));
  const current = await db().mark.findFirstOrThrow({ where: { answerId, isCurrent: true } });
  expect(current.outcome).toBe('slower');
  expect(refused(await reopenSecondLook({ puzzleId, answerId, memberId })).code).toBe('nothing-to-undo');
});
