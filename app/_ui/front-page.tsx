import type { ReactElement } from 'react';
import type { PublicPuzzle } from '#lib/puzzle/public-puzzle.ts';
import { say } from '#lib/words/format.ts';
import { linkFor, type Viewer } from '../_http/viewer.ts';
import { BoardFigure } from './board-figure.tsx';
import { ClosingLine } from './closing-line.tsx';
import { renderPage } from './html-page.tsx';
import { episodeLabel, ownTitle, taskHeadline } from './puzzle-heads.ts';
import { sayDay } from './say-times.ts';

/** What the first page shows. */
export interface FrontInput {
  readonly viewer: Viewer;
  readonly showName: string | null;
  readonly open: readonly PublicPuzzle[];
  readonly past: readonly PublicPuzzle[];
  readonly now: Date;
}

/** The first page: the open puzzle with its diagram, then the past ones as a table of contents. */
export function frontPage(input: FrontInput): Promise<string> {
  const { viewer, showName } = input;
  const name = showName ?? 'Tailpiece';
  return renderPage({
    viewer,
    path: '/',
    title: name,
    masthead: { left: name, right: say(viewer.locale, 'pages.front-title') },
    children: <Front {...input} />,
  });
}

function Front({ viewer, open, past, now }: FrontInput): ReactElement {
  const { locale } = viewer;
  return (
    <>
      {open.map((puzzle, i) => (
        <OpenPuzzle key={puzzle.slug} puzzle={puzzle} now={now} viewer={viewer} index={i} />
      ))}
      {open.length > 0 ? null : (
        <h1>{say(locale, past.length > 0 ? 'pages.front-none-open' : 'pages.front-empty')}</h1>
      )}
      {past.length === 0 ? null : (
        <section className="section">
          <h2 className="label">{say(locale, 'pages.front-past')}</h2>
          <ol className="contents">
            {past.map((puzzle) => (
              <PastPuzzle key={puzzle.slug} puzzle={puzzle} viewer={viewer} />
            ))}
          </ol>
        </section>
      )}
    </>
  );
}

interface OpenProps {
  readonly puzzle: PublicPuzzle;
  readonly now: Date;
  readonly viewer: Viewer;
  readonly index: number;
}

function OpenPuzzle({ puzzle, now, viewer, index }: OpenProps): ReactElement {
  const { locale } = viewer;
  const headline = taskHeadline(puzzle, locale);
  const address = linkFor(viewer, `/p/${puzzle.slug}`);
  const kicker = [episodeLabel(puzzle, locale), ownTitle(puzzle)].filter((part) => part !== '').join(' · ');
  return (
    <section className={index === 0 ? 'two-columns' : 'two-columns section'}>
      <div className="head">
        <p className="kicker label quiet">{kicker}</p>
        {index === 0 ? <h1>{headline}</h1> : <h2 className="headline">{headline}</h2>}
        <p className="how-far">{puzzle.howFar}</p>
      </div>
      <BoardFigure fen={puzzle.fen} title={headline} locale={locale} id={`d${index}`} />
      <div className="body">
        <ClosingLine puzzle={puzzle} now={now} locale={locale} />
        <p className="answer-form">
          <a className="button" href={address}>
            {say(locale, 'pages.front-answer')}
          </a>
        </p>
      </div>
    </section>
  );
}

function PastPuzzle({ puzzle, viewer }: { puzzle: PublicPuzzle; viewer: Viewer }): ReactElement {
  const { locale } = viewer;
  const isRevealed = puzzle.state === 'revealed';
  const path = isRevealed ? `/p/${puzzle.slug}/solution` : `/p/${puzzle.slug}`;
  const label = episodeLabel(puzzle, locale);
  const title = ownTitle(puzzle);
  return (
    <li>
      <span>
        {label === '' ? null : <span className="figures quiet">{label} · </span>}
        <a href={linkFor(viewer, `/p/${puzzle.slug}`)}>{title || taskHeadline(puzzle, locale)}</a>
        {title === '' ? null : <span className="quiet"> · {taskHeadline(puzzle, locale)}</span>}
      </span>
      <span className="quiet">
        {sayDay(puzzle.closesAt, puzzle.zone, locale)} ·{' '}
        {isRevealed ? (
          <a href={linkFor(viewer, path)}>{say(locale, 'pages.state-revealed')}</a>
        ) : (
          say(locale, puzzle.state === 'void' ? 'pages.state-void' : 'pages.state-closed')
        )}
      </span>
    </li>
  );
}
