import type { ReactElement } from 'react';
import { may } from '#lib/people/may.ts';
import type { Host } from '#lib/usecases/people/admit-member.ts';
import type { DeskPuzzleView } from '#lib/usecases/puzzles/show-desk-puzzle.ts';
import { type NewWay, showNewWays } from '#lib/usecases/puzzles/show-new-ways.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { movesText } from '#lib/words/move-text.ts';

/** The alarm of rule A5: what viewers found that the book did not know, with the way to mark everybody again. */
export async function NewWays({
  view,
  host,
}: {
  view: DeskPuzzleView;
  host: Host;
}): Promise<ReactElement | null> {
  const { locale } = host;
  const ways = await showNewWays(view.record);
  if (ways.length === 0) return null;
  const isOffered = ways.some((way) => !way.isMarkedSince);
  return (
    <section className="stack new-ways" aria-labelledby="new-ways">
      <h2 id="new-ways" className="red">
        {say(locale, 'desk.ways-title')}
      </h2>
      <div className="problem">
        <ul className="read-lines">
          {ways.map((way) => (
            <li key={way.moves.join(' ')}>{sentences(way, view, locale)}</li>
          ))}
        </ul>
      </div>
      <p>{say(locale, isOffered ? 'desk.ways-offer' : 'desk.ways-done')}</p>
      {isOffered && may(host.role, 'regrade-puzzle') ? (
        <p>
          <a className="button button-fit" href={`/desk/puzzles/${view.record.id}/regrade`}>
            {say(locale, 'desk.regrade-link')}
          </a>
        </p>
      ) : null}
    </section>
  );
}

function sentences(way: NewWay, view: DeskPuzzleView, locale: Locale): string {
  const { fen, task } = view.record.terms;
  const move = movesText(fen, way.moves, { letters: locale }).replaceAll(' ', '\u00a0');
  const what =
    way.shorter === null
      ? say(locale, 'desk.ways-other', { count: way.people, move, task: task.kind })
      : say(locale, 'desk.ways-shorter', { count: way.people, move, moves: way.shorter });
  const who =
    way.names.length === 0
      ? null
      : say(locale, 'desk.ways-who', {
          names: way.names.map((name) => `\u2068${name}\u2069`).join(', '),
          more: way.people - way.names.length,
        });
  const ruled = way.isRuled ? say(locale, 'desk.ways-ruled') : null;
  return [what, who, ruled, say(locale, 'desk.ways-right')].filter((one) => one !== null).join(' ');
}
