import type { ReactElement, ReactNode } from 'react';
import type { ReadLine } from '#lib/reading/reading.ts';

/** A text as it came, the characters that became moves underlined. */
export function QuotedText({ text, line }: { text: string; line: ReadLine }): ReactElement {
  const parts: ReactNode[] = [];
  let at = 0;
  for (const { start, end } of [...line].sort((a, b) => a.start - b.start)) {
    if (start < at || end > text.length) continue;
    parts.push(text.slice(at, start), <mark key={start}>{text.slice(start, end)}</mark>);
    at = end;
  }
  parts.push(text.slice(at));
  return (
    <blockquote className="quote" dir="auto">
      {parts}
    </blockquote>
  );
}
