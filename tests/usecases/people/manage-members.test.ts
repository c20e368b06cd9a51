import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { addHelper, removeMember, showMembers } from '#lib/usecases/people/manage-members.ts';
import { buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

test('[A8] a helper is added and listed; a name that is taken is refused and leaves nothing behind', async () => {
  const { showId, memberId } = await buildShow();
  const helper = { showId, memberId, signInName: 'Tom', password: 'lanterns at low tide' };
  const added = await addHelper(helper);
  expect(added.ok).toBe(true);
  expect((await showMembers(showId)).map((member) => [member.signInName, member.role])).toEqual([
    [expect.stringMatching(/^owner/), 'owner'],
    ['tom', 'helper'],
  ]);
  const entries = await db().log.count({ where: { kind: 'member-added' } });
  expect(await addHelper(helper)).toEqual({ ok: false, reason: { code: 'name-taken' } });
  expect(await addHelper({ ...helper, signInName: 'tim', password: 'short' })).toMatchObject({ ok: false });
  expect(await db().log.count({ where: { kind: 'member-added' } })).toBe(entries);
});

test("[A8] a helper of this show is removed; owners, other shows' helpers and removed ones are not", async () => {
  const { showId, memberId } = await buildShow();
  const other = await buildShow();
  const added = await addHelper({ showId, memberId, signInName: 'una', password: 'lanterns at low tide' });
  const subject = added.ok ? added.value : 0;
  const refused = { ok: false, reason: { code: 'no-such-helper' } };
  expect(await removeMember({ showId: other.showId, memberId: other.memberId, subject })).toEqual(refused);
  expect(await removeMember({ showId, memberId, subject: memberId })).toEqual(refused);
  expect((await removeMember({ showId, memberId, subject })).ok).toBe(true);
  expect(await removeMember({ showId, memberId, subject })).toEqual(refused);
  expect((await showMembers(showId)).map((member) => member.role)).toEqual(['owner']);
});
