// What a person can cause is a value, never an exception.

/** Either a value, or a reason that says what was wrong and what would have been right. */
export type Result<T, R> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly reason: R };

/** Wraps a value as a success. */
export function ok<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

/** Wraps a reason as a refusal. */
export function refuse<R>(reason: R): { readonly ok: false; readonly reason: R } {
  return { ok: false, reason };
}
