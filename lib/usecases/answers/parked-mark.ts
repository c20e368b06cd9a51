// An answer whose marking has failed three times is set aside: nothing of it is lost, it needs the host,
// and the others are marked without waiting for it.

import type { Mark } from '#lib/marking/mark.ts';
import { READER_VERSION } from '#lib/reading/reader-version.ts';
import type { AnswerRecord } from '#lib/store/answers.ts';
import { textHash } from './doubt-key.ts';
import type { Opinion } from './judge-answer.ts';
import type { LoadedBook } from './loaded-book.ts';

/** `unclear`, with a question of its own on the list of doubtful answers. Reads nothing: reading may be what failed. */
export function parkedOpinion(book: LoadedBook, answer: AnswerRecord): Opinion {
  const mark: Mark = {
    outcome: 'unclear',
    flags: [],
    points: 0,
    p: 0,
    r: 1,
    atMove: null,
    line: null,
    reading: null,
    verdicts: [],
    reason: { code: 'parked', params: {} },
    scheme: book.scheme.name,
    schemeVersion: book.scheme.version,
    readerVersion: READER_VERSION,
    engineVersion: book.engineVersion,
  };
  const doubt = `parked ${textHash(answer.text)}`;
  return { answer, result: { kind: 'mark', mark }, book, wants: [], doubt, isAddressed: false };
}
