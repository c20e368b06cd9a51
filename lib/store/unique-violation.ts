// Turns a refused row into a fact that the caller can act on, by the database's own code.

const UNIQUE_VIOLATION = '23505';

/** Was a row refused because another has the same key? Looks through the client's wrappings. */
export function isUniqueViolation(error: unknown): boolean {
  let cause: unknown = error;
  for (let depth = 0; depth < 8 && typeof cause === 'object' && cause !== null; depth += 1) {
    if (Reflect.get(cause, 'code') === 'P2002') return true;
    if (Reflect.get(cause, 'originalCode') === UNIQUE_VIOLATION) return true;
    if (Reflect.get(cause, 'kind') === 'UniqueConstraintViolation') return true;
    const meta: unknown = Reflect.get(cause, 'meta');
    cause =
      typeof meta === 'object' && meta !== null && 'driverAdapterError' in meta
        ? meta.driverAdapterError
        : Reflect.get(cause, 'cause');
  }
  return false;
}
