// An opinion becomes a mark as it is stored: what intake knows of the answer joins its flags, and the
// versions it rests on stand beside it.

import type { Flag } from '#lib/marking/mark.ts';
import type { AnswerRecord } from '#lib/store/answers.ts';
import type { NewMark } from '#lib/store/marks.ts';
import type { Timely } from '#lib/store/standing-of-answers.ts';
import type { Opinion } from './judge-answer.ts';

/** The mark to store, as a list of one; empty where the book lacks something. */
export function toNewMark(opinion: Opinion, timely: Timely): NewMark[] {
  const { answer, result, book, doubt } = opinion;
  if (result.kind !== 'mark') return [];
  const { mark } = result;
  return [
    {
      ...mark,
      answerId: answer.id,
      puzzleId: answer.puzzleId,
      solverId: answer.solverId,
      flags: [...mark.flags, ...intakeFlags(answer, timely)],
      bookVersion: book.bookVersion,
      revision: book.revision,
      doubt,
      overrule: null,
      regradeId: null,
    },
  ];
}

function intakeFlags(answer: AnswerRecord, timely: Timely): Flag[] {
  const flags: Flag[] = [];
  if (timely === 'late') flags.push('late');
  if (timely === 'uncertain') flags.push('time-uncertain');
  if (answer.intakeFlags.includes('edited')) flags.push('edited');
  if (answer.intakeFlags.includes('edited-unseen')) flags.push('edited-unseen');
  return flags;
}
