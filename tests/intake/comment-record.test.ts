import { expect, test } from 'vitest';
import { type CommentRecord, commentKey } from '#lib/intake/comment-record.ts';

const at = (text: string): Date => new Date(text);
const record: CommentRecord = {
  author: 'Ann',
  text: 'Rh1',
  at: { from: at('2026-11-27T10:00:00Z'), to: at('2026-11-27T10:00:00Z') },
  externalId: null,
  link: null,
  isEdited: false,
  isReply: false,
};

test("[T3] the source's own id decides, whatever the text says later", () => {
  const one = { ...record, externalId: 'c17' };
  expect(commentKey(one)).toBe(commentKey({ ...one, text: 'Qb1', at: null, author: 'Ann K.' }));
  expect(commentKey(one)).not.toBe(commentKey({ ...one, externalId: 'c18' }));
});

test('[T3] without id and link the author, the exact time and the text are the key', () => {
  expect(commentKey(record)).toBe(commentKey({ ...record }));
  for (const other of [
    { author: 'Bee' },
    { text: 'Qb1' },
    { at: { from: at('2026-11-27T10:00:01Z'), to: at('2026-11-27T10:00:01Z') } },
  ]) {
    expect(commentKey({ ...record, ...other })).not.toBe(commentKey(record));
  }
});

test('[T3] a coarse time is no part of the key: tomorrow\'s export says "3 days ago" of the same comment', () => {
  const today = { ...record, at: { from: at('2026-11-25T12:00:00Z'), to: at('2026-11-26T12:00:00Z') } };
  const tomorrow = { ...record, at: { from: at('2026-11-25T15:00:00Z'), to: at('2026-11-26T15:00:00Z') } };
  expect(commentKey(today)).toBe(commentKey(tomorrow));
});
