import { expect, test } from 'vitest';
import { ownTitle, taskHeadline } from '../../app/_ui/puzzle-heads.ts';

const asked = { turn: 'w', task: { kind: 'mate', moves: 3 } } as const;

test('a title that is only the task is none, whatever language the desk wrote it in', () => {
  expect(ownTitle({ ...asked, title: taskHeadline(asked, 'en') })).toBe('');
  expect(ownTitle({ ...asked, title: taskHeadline(asked, 'de') })).toBe('');
  expect(ownTitle({ ...asked, title: 'The quiet rook' })).toBe('The quiet rook');
});
