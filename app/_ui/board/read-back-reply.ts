// The reply of the reading address, as the board takes it: lines of moves, and the same in words.

/** Every reading that survives, in neutral order. */
export interface ReadBackReply {
  readonly lines: readonly (readonly string[])[];
  readonly texts: readonly string[];
}

/** The reply from JSON; null where it has another shape. */
export function parseReadBack(json: unknown): ReadBackReply | null {
  const readings = property(json, 'readings');
  if (!Array.isArray(readings)) return null;
  const lines: string[][] = [];
  const texts: string[] = [];
  for (const reading of readings) {
    const line = property(reading, 'line');
    if (!Array.isArray(line)) return null;
    lines.push(line.map(String));
    texts.push(String(property(reading, 'text') ?? ''));
  }
  return { lines, texts };
}

function property(value: unknown, name: string): unknown {
  return typeof value === 'object' && value !== null ? Reflect.get(value, name) : undefined;
}
