import type { ReactElement } from 'react';
import type { Reading } from '#lib/reading/reading.ts';
import type { Position } from '#lib/rules/position.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { lettersOf } from './piece-letters.ts';
import { LineText } from './printed-line.tsx';
import { plainLine, printLine } from './read-line.ts';

const MOST_SHOWN = 8;

/** What a reading holds beside its main line: branches, moves offered for the same place, tries turned down. */
export function OtherLines({
  reading,
  start,
  locale,
}: {
  reading: Reading;
  start: Position;
  locale: Locale;
}): ReactElement {
  const groups = [
    ['pages.check-branches', reading.branches],
    ['pages.check-choices', reading.choices],
    ['pages.check-tries', reading.tries],
  ] as const;
  return (
    <>
      {groups.map(([label, lines]) =>
        lines.length === 0 ? null : (
          <div key={label}>
            <p className="label">{say(locale, label)}</p>
            <ul className="plain">
              {lines.slice(0, MOST_SHOWN).map((one) => {
                const line = printLine(start, one, lettersOf(locale));
                return (
                  <li key={plainLine(line)}>
                    <LineText line={line} locale={locale} />
                  </li>
                );
              })}
            </ul>
          </div>
        ),
      )}
    </>
  );
}
