// Ends a switch over literal codes, so that a new code is a type error wherever it is not handled.

/** Throws; typed so that a call compiles only when every case was handled before it. */
export function exhaustive(value: never): never {
  throw new Error(`Unhandled case: ${String(value)}`);
}
