import type { ReactElement } from 'react';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import type { PrintedLine } from './read-line.ts';

/** A line as a printed column sets it: numbers and the solver's moves bold, gaps as dots. */
export function LineText({ line, locale }: { line: PrintedLine; locale: Locale }): ReactElement {
  let afterGap = true;
  return (
    <span className="moves movetext">
      {line.moves.map((one, i) => {
        const key = `${i}`;
        if (one.kind === 'gap') {
          afterGap = true;
          return (
            <span key={key} className="aside">
              <span aria-hidden="true">… </span>
              <span className="out-of-sight">({say(locale, 'pages.gap')}) </span>
            </span>
          );
        }
        const number = !one.isSecond ? `${one.number} ` : afterGap ? `${one.number}… ` : '';
        afterGap = false;
        return (
          <span key={key} className={one.by === 'solver' ? 'move solver' : 'move'}>
            {number}
            {one.text}{' '}
          </span>
        );
      })}
    </span>
  );
}
