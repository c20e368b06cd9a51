// Did the database refuse what was to be written, or did the machine fail? By its own code, never by message text.

// Data exceptions, broken constraints, and work that held its transaction for too long.
const REFUSED = /^(2[23][0-9A-Z]{3}|25P03|P20(0[0-9]|1[1-9]|20|23|28))$/;

/** True where the same would be refused again; false where the database was away or busy. Bounded at eight causes. */
export function isDataRefused(error: unknown): boolean {
  let cause: unknown = error;
  for (let depth = 0; depth < 8 && typeof cause === 'object' && cause !== null; depth += 1) {
    const at: object = cause;
    if (['code', 'originalCode'].some((name) => REFUSED.test(String(Reflect.get(at, name))))) return true;
    const meta: unknown = Reflect.get(at, 'meta');
    cause =
      typeof meta === 'object' && meta !== null && 'driverAdapterError' in meta
        ? meta.driverAdapterError
        : Reflect.get(at, 'cause');
  }
  return false;
}
