import type { ReactElement } from 'react';
import type { Position } from '#lib/rules/position.ts';
import type { FirstMove } from '#lib/usecases/puzzles/first-moves.ts';
import type { ShownSolution } from '#lib/usecases/puzzles/show-solution.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { linkFor, type Viewer } from '../_http/viewer.ts';
import { firstMoveText, replyText } from './first-move-words.ts';
import { sayShare } from './say-share.ts';

interface TableProps {
  readonly shown: ShownSolution;
  readonly start: Position;
  readonly viewer: Viewer;
  readonly path: string;
}

const MOST_ROWS = 10;

/** How the first moves of all answers were spread: a bar of ink each, the share in words. */
export function FirstMovesTable({ shown, start, viewer, path }: TableProps): ReactElement | null {
  const { locale } = viewer;
  if (shown.answers === 0) return null;
  const rows = shown.firstMoves.slice(0, MOST_ROWS);
  const most = Math.max(...rows.map((row) => row.count), 1);
  const rest = shown.answers - rows.reduce((sum, row) => sum + row.count, 0);
  return (
    <section className="section">
      <table className="spread">
        <caption className="label">{say(locale, 'pages.first-moves', { count: shown.answers })}</caption>
        <tbody>
          {rows.map((row) => {
            const reply = row.verdict === 'slips' ? replyText(start, row, locale) : null;
            return (
              <tr key={row.move}>
                <th scope="row" className="moves">
                  <a
                    className={row.verdict === 'holds' ? 'solver' : ''}
                    href={linkFor(viewer, path, { try: row.move }, '#why-not')}
                  >
                    {firstMoveText(start, row.move, locale)}
                  </a>{' '}
                  <span className="quiet">{remarkOn(row, reply, locale)}</span>
                </th>
                <td className="bar-cell">
                  <Bar share={row.count / most} />
                </td>
                <td className="number">{sayShare(row.count, shown.answers, locale)}</td>
              </tr>
            );
          })}
          {rest === 0 ? null : (
            <tr>
              <th scope="row" className="quiet">
                {say(locale, 'pages.spread-rest')}
              </th>
              <td className="bar-cell">
                <Bar share={Math.min(1, rest / most)} />
              </td>
              <td className="number">{sayShare(rest, shown.answers, locale)}</td>
            </tr>
          )}
        </tbody>
      </table>
    </section>
  );
}

function remarkOn({ verdict, isBenefit }: FirstMove, reply: string | null, locale: Locale): string {
  if (isBenefit) return say(locale, 'pages.spread-benefit');
  switch (verdict) {
    case 'holds':
    case 'slower':
    case 'unclear':
      return say(locale, `pages.spread-${verdict}`);
    case 'slips':
      return reply ?? say(locale, 'pages.spread-slips-at-once');
    case 'unknown':
      return '';
  }
}

function Bar({ share }: { share: number }): ReactElement {
  return (
    <svg className="bar" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
      <rect
        x={Math.round(100 - 100 * share)}
        width={Math.max(1, Math.round(100 * share))}
        height="6"
        fill="currentColor"
      />
    </svg>
  );
}
