import { ok, type Result, refuse } from '#lib/kit/result.ts';

/** Fields of a form or of a JSON object; everything that is not text is left out. */
export type Fields = ReadonlyMap<string, string>;

/** A body that came in, and whether it came as data. */
export interface ReadBody {
  readonly fields: Fields;
  readonly isJson: boolean;
  /** The same as parsed, for fields that are lists. */
  readonly json: unknown;
}

/** Why a body is not taken. */
export type BodyReason =
  | { readonly code: 'too-large'; readonly mostBytes: number }
  | { readonly code: 'wrong-type'; readonly expected: string }
  | { readonly code: 'not-json' };

const MOST_BYTES = 64 * 1024;
const EXPECTED = 'application/x-www-form-urlencoded, application/json';

/**
 * Reads a form or a JSON object of at most 64 kB: a text of 4,000 signs fits in the widest writing. Compressed
 * bodies are refused, never unpacked; a body that says it is too large is refused unread.
 */
export async function readForm(request: Request): Promise<Result<ReadBody, BodyReason>> {
  const type = (request.headers.get('content-type') ?? '').split(';')[0]?.trim().toLowerCase();
  const isJson = type === 'application/json';
  if (!isJson && type !== 'application/x-www-form-urlencoded') return wrongType();
  if ((request.headers.get('content-encoding') ?? 'identity') !== 'identity') return wrongType();
  if (Number(request.headers.get('content-length') ?? 0) > MOST_BYTES) return tooLarge();
  const text = await readCapped(request);
  if (text === null) return tooLarge();
  if (!isJson) return ok({ fields: new Map(new URLSearchParams(text)), isJson, json: null });
  return parseJsonBody(text);
}

function parseJsonBody(text: string): Result<ReadBody, BodyReason> {
  try {
    const json: unknown = JSON.parse(text);
    if (typeof json !== 'object' || json === null || Array.isArray(json)) return refuse({ code: 'not-json' });
    const fields = new Map<string, string>();
    for (const [key, value] of Object.entries(json)) if (typeof value === 'string') fields.set(key, value);
    return ok({ fields, isJson: true, json });
  } catch {
    return refuse({ code: 'not-json' });
  }
}

async function readCapped(request: Request): Promise<string | null> {
  if (request.body === null) return '';
  const parts: Uint8Array[] = [];
  let bytes = 0;
  const reader = request.body.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    bytes += value.byteLength;
    if (bytes > MOST_BYTES) {
      await reader.cancel();
      return null;
    }
    parts.push(value);
  }
  return Buffer.concat(parts).toString('utf8');
}

function tooLarge(): Result<never, BodyReason> {
  return refuse({ code: 'too-large', mostBytes: MOST_BYTES });
}

function wrongType(): Result<never, BodyReason> {
  return refuse({ code: 'wrong-type', expected: EXPECTED });
}
