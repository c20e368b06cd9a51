import type { ReadBody } from './read-form.ts';

/** The fields of an answer, from form or JSON. */
export interface AnswerFields {
  readonly text: string;
  /** The reading that was chosen, UCI; null where it is left open. */
  readonly meant: readonly string[] | null;
  readonly name: string;
  readonly clientKey: string;
  readonly receipt: string | null;
  readonly channel: 'page' | 'board' | 'api';
  /** Revision of the puzzle that the sender's page showed, as it came. */
  readonly seen: unknown;
}

/** Takes the fields of an answer and nothing else: no outcome, no time, no person can be sent along. */
export function answerFields({ fields, isJson, json }: ReadBody): AnswerFields {
  const reading = (fields.get('reading') ?? '').trim();
  const receipt = fields.get('receipt') ?? '';
  return {
    text: fields.get('text') ?? '',
    meant: isJson ? meantOf(json) : reading === '' ? null : reading.split(' '),
    name: fields.get('name') ?? '',
    clientKey: fields.get('key') ?? '',
    receipt: receipt === '' ? null : receipt,
    channel: isJson ? 'api' : 'page',
    seen: seenOf({ fields, json }),
  };
}

/** The sender's word on which revision was seen: a field of the form, or a number in JSON. */
export function seenOf({ fields, json }: Pick<ReadBody, 'fields' | 'json'>): unknown {
  const isObject = typeof json === 'object' && json !== null;
  return isObject ? Reflect.get(json, 'seen') : fields.get('seen');
}

const MOST_MOVES = 400;

function meantOf(json: unknown): readonly string[] | null {
  const meant: unknown = typeof json === 'object' && json !== null ? Reflect.get(json, 'meant') : null;
  if (!Array.isArray(meant) || meant.length > MOST_MOVES) return null;
  return meant.every((uci) => typeof uci === 'string') ? meant : null;
}
