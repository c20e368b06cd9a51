import type { ReactElement } from 'react';
import type { ScopeChoice, ShownStandings } from '#lib/usecases/standings/show-standings.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { wholeNumber } from '../_http/numbers.ts';
import { linkFor, type Viewer } from '../_http/viewer.ts';
import { renderPage } from './html-page.tsx';

interface StandingsInput {
  readonly viewer: Viewer;
  readonly shown: ShownStandings;
  readonly isFirst: boolean;
}

/** Standings as a ledger: rank, name, solved, points. */
export function standingsPage(input: StandingsInput): Promise<string> {
  const { viewer, shown } = input;
  const { locale } = viewer;
  const title = shown.scope === null ? say(locale, 'pages.link-standings') : scopeName(shown.scope, locale);
  return renderPage({
    viewer,
    path: '/standings',
    title: `${say(locale, 'pages.link-standings')} · ${title}`,
    masthead: { left: shown.showName || 'Tailpiece', right: say(locale, 'pages.link-standings') },
    children: (
      <div className="stack">
        <h1>{title}</h1>
        {shown.rows.length === 0 ? <p>{say(locale, 'pages.standings-empty')}</p> : <Ledger {...input} />}
        <Choices {...input} />
      </div>
    ),
  });
}

function Ledger({ viewer, shown }: StandingsInput): ReactElement {
  const { locale } = viewer;
  return (
    <>
      <table>
        <caption className="quiet">{say(locale, 'pages.standings-count', { count: shown.solvers })}</caption>
        <thead>
          <tr>
            <th scope="col">{say(locale, 'pages.standings-rank')}</th>
            <th scope="col">{say(locale, 'pages.standings-name')}</th>
            <th scope="col" className="number">
              {say(locale, 'pages.standings-solved')}
            </th>
            <th scope="col" className="number">
              {say(locale, 'pages.standings-points')}
            </th>
          </tr>
        </thead>
        <tbody>
          {shown.rows.map((row) => (
            <tr key={row.solverId}>
              <td>
                {row.rank}
                {row.isShared ? (
                  <span className="quiet"> {say(locale, 'pages.standings-shared')}</span>
                ) : null}
              </td>
              <th scope="row">
                {row.name === null ? (
                  <i className="quiet">{say(locale, 'pages.no-name')}</i>
                ) : (
                  <bdi>{row.name}</bdi>
                )}
              </th>
              <td className="number">{row.solved}</td>
              <td className="number">{row.points}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {shown.next === null || shown.scope === null ? null : (
        <p>
          <a
            rel="next"
            href={linkFor(viewer, '/standings', {
              [shown.scope.kind]: String(shown.scope.id),
              after: `${shown.next.points}.${shown.next.solved}.${shown.next.solverId}`,
            })}
          >
            {say(locale, 'pages.standings-next')}
          </a>
        </p>
      )}
    </>
  );
}

function Choices({ viewer, shown }: StandingsInput): ReactElement | null {
  const { locale } = viewer;
  if (shown.choices.length < 2) return null;
  return (
    <nav aria-label={say(locale, 'pages.standings-others')}>
      <h2 className="label">{say(locale, 'pages.standings-others')}</h2>
      <ol className="contents">
        {shown.choices.map((choice) => {
          const isCurrent = choice.kind === shown.scope?.kind && choice.id === shown.scope.id;
          return (
            <li key={`${choice.kind}${choice.id}`}>
              <a
                href={linkFor(viewer, '/standings', { [choice.kind]: String(choice.id) })}
                {...(isCurrent ? { 'aria-current': 'page' as const } : {})}
              >
                {scopeName(choice, locale)}
              </a>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}

function scopeName(scope: ScopeChoice, locale: Locale): string {
  if (scope.number === null) return scope.name;
  const number = say(locale, 'pages.number', { number: scope.number });
  return scope.name === '' ? number : `${number}: ${scope.name}`;
}

/** The place at which a page goes on, from `points.solved.solver`; null for everything else. */
export function parsePlace(text: string | null): { points: number; solved: number; solverId: number } | null {
  const [points, solved, solverId, ...rest] = (text ?? '').split('.').map((part) => wholeNumber(part));
  if (points == null || solved == null || solverId == null || rest.length > 0) return null;
  return { points, solved, solverId };
}
