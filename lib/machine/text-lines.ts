// Lines of a byte stream, one at a time: the stream is read no faster than the lines are used, and a
// line without end costs no more memory than the bound.

/** A line of text, or why there is none at this place. `line` counts from 1. */
export type TextLine =
  | { readonly line: number; readonly text: string }
  | { readonly line: number; readonly fault: 'too-long' | 'not-utf8' };

/** The longest line that is kept, in bytes. */
export const LONGEST_LINE = 1_048_576;

/**
 * Parts a stream at line feeds (a carriage return before one is dropped). Text after the last line feed
 * is a line; nothing after it is none. A line over the bound is passed over to its end and reported.
 */
export async function* textLines(
  stream: AsyncIterable<Uint8Array>,
  longest: number = LONGEST_LINE,
): AsyncGenerator<TextLine> {
  let line = 1;
  let parts: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of stream) {
    let from = 0;
    for (let end = chunk.indexOf(10, from); end >= 0; end = chunk.indexOf(10, from)) {
      size += end - from;
      if (size <= longest) parts.push(chunk.subarray(from, end));
      yield lineFrom(parts, size > longest, line);
      line += 1;
      parts = [];
      size = 0;
      from = end + 1;
    }
    size += chunk.length - from;
    if (size > longest) parts = [];
    // Copied: a view would keep the whole chunk alive.
    else if (from < chunk.length) parts.push(chunk.slice(from));
  }
  if (size > 0) yield lineFrom(parts, size > longest, line);
}

function lineFrom(parts: readonly Uint8Array[], isTooLong: boolean, line: number): TextLine {
  if (isTooLong) return { line, fault: 'too-long' };
  try {
    const decoder = new TextDecoder('utf-8', { fatal: true });
    const text = parts.length === 1 ? decoder.decode(parts[0]) : decoder.decode(Buffer.concat(parts));
    return { line, text: text.endsWith('\r') ? text.slice(0, -1) : text };
  } catch {
    return { line, fault: 'not-utf8' };
  }
}
