import type { ReactElement } from 'react';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import type { Position } from '#lib/rules/position.ts';
import { writeUci } from '#lib/rules/uci.ts';
import type { ShownSolution } from '#lib/usecases/puzzles/show-solution.ts';
import { say } from '#lib/words/format.ts';
import type { Viewer } from '../_http/viewer.ts';
import { firstMoveSentence, firstMoveText } from './first-move-words.ts';
import { unbroken } from './unbroken.ts';

interface WhyNotProps {
  readonly shown: ShownSolution;
  readonly start: Position;
  readonly viewer: Viewer;
  readonly path: string;
}

/** *Why not?*: any first move, asked on the board or from the list, answered from the book. */
export function WhyNot({ shown, start, viewer, path }: WhyNotProps): ReactElement {
  const { locale } = viewer;
  const moves = legalMoves(start)
    .map((move) => ({ uci: writeUci(move), text: firstMoveText(start, writeUci(move), locale) }))
    .sort((a, b) => a.text.localeCompare(b.text, locale));
  return (
    <section className="section" id="why-not">
      <h2 className="label">{say(locale, 'pages.why-not')}</h2>
      {shown.asked === null ? null : (
        <p className="lead" role="status">
          {unbroken(firstMoveSentence(shown.puzzle, shown.asked, locale))}
        </p>
      )}
      <form method="get" action={`${path}#why-not`} className="ask">
        <label htmlFor="try">{say(locale, 'pages.why-not-pick')}</label>
        <select id="try" name="try" defaultValue={shown.asked?.move ?? ''}>
          {moves.map(({ uci, text }) => (
            <option key={uci} value={uci}>
              {text}
            </option>
          ))}
        </select>
        {viewer.picked === null ? null : <input type="hidden" name="lang" value={viewer.picked} />}
        <button type="submit" className="button-plain">
          {say(locale, 'pages.why-not')}
        </button>
      </form>
    </section>
  );
}
