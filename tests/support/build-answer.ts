// A submission with everything filled in.

import { randomToken } from '#lib/machine/tokens.ts';
import type { Submission } from '#lib/usecases/answers/submit-answer.ts';

/** What a viewer sends from the page, unless told otherwise. */
export function submission(slug: string, text: string, more: Partial<Submission> = {}): Submission {
  return {
    slug,
    text,
    meant: null,
    name: 'Ada',
    clientKey: randomToken(),
    channel: 'page',
    device: null,
    receipt: null,
    signin: null,
    locale: 'en',
    ...more,
  };
}
