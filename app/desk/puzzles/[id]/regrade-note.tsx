import type { ReactElement } from 'react';
import { findOpenRegrade } from '#lib/usecases/answers/show-regrade.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';

/** Says that a regrade is open, with the way there; nothing where none is. */
export async function RegradeNote({
  puzzle,
  locale,
}: {
  puzzle: number;
  locale: Locale;
}): Promise<ReactElement | null> {
  const state = await findOpenRegrade(puzzle);
  if (state === null) return null;
  return (
    <p className="problem">
      {say(locale, state === 'previewed' ? 'desk.regrade-waits' : 'desk.regrade-runs')}{' '}
      <a href={`/desk/puzzles/${puzzle}/regrade`}>{say(locale, 'desk.regrade-look')}</a>
    </p>
  );
}
