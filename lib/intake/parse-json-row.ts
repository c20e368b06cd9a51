// What are the cells of one line of JSON Lines? An object with text, number or true/false values
// becomes cells in the order of the heads, so that JSON Lines go the same way as CSV.

import { ok, type Result, refuse } from '#lib/kit/result.ts';

/** Why a line is no row. */
export type JsonRowReason =
  | { readonly code: 'not-json'; readonly row: number }
  | { readonly code: 'not-an-object'; readonly row: number };

/** Longest head and most fields kept of one line. */
const MOST_FIELDS = 200;

/**
 * Fields of one line as text, in order; nested values are left out. Keys are data: `__proto__` is a
 * name like any other and touches nothing. NUL and halves of signs, which no table can keep, are U+FFFD.
 */
export function parseJsonRow(line: string, row: number): Result<ReadonlyMap<string, string>, JsonRowReason> {
  let value: unknown;
  try {
    value = JSON.parse(line);
  } catch {
    return refuse({ code: 'not-json', row });
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return refuse({ code: 'not-an-object', row });
  }
  const fields = new Map<string, string>();
  for (const [key, field] of Object.entries(value).slice(0, MOST_FIELDS)) {
    if (typeof field === 'string') fields.set(key, field.toWellFormed().replaceAll('\0', '\ufffd'));
    else if (typeof field === 'number' || typeof field === 'boolean') fields.set(key, String(field));
  }
  return ok(fields);
}

/** The fields as cells under the given heads; a field that the line lacks is empty. */
export function cellsUnder(heads: readonly string[], fields: ReadonlyMap<string, string>): string[] {
  return heads.map((head) => fields.get(head) ?? '');
}
