import type { ReactElement } from 'react';
import type { PublicPuzzle } from '#lib/puzzle/public-puzzle.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { say } from '#lib/words/format.ts';
import { linkFor, type Viewer } from '../_http/viewer.ts';
import { BoardFigure } from './board-figure.tsx';
import { ClosingLine } from './closing-line.tsx';
import { Corrections } from './corrections.tsx';
import { exampleMove } from './example-move.ts';
import { renderPage } from './html-page.tsx';
import { episodeLabel, ownTitle, taskHeadline } from './puzzle-heads.ts';

/** The puzzle page: diagram, task, how far, time left, and while it is open the answer form. */
export function puzzlePage(input: {
  readonly puzzle: PublicPuzzle;
  readonly now: Date;
  readonly viewer: Viewer;
  readonly siteAddress: string;
}): Promise<string> {
  const { puzzle, viewer } = input;
  const { locale } = viewer;
  const headline = taskHeadline(puzzle, locale);
  const path = `/p/${puzzle.slug}`;
  return renderPage({
    viewer,
    path,
    title: `${headline} · ${puzzle.showName}`,
    description: puzzle.howFar,
    preview: `${input.siteAddress}${path}/diagram.png`,
    masthead: { left: puzzle.showName, right: episodeLabel(puzzle, locale) },
    hasBoard: true,
    children: <Puzzle {...input} headline={headline} path={path} />,
  });
}

interface PuzzleProps {
  readonly puzzle: PublicPuzzle;
  readonly now: Date;
  readonly viewer: Viewer;
  readonly headline: string;
  readonly path: string;
}

function Puzzle({ puzzle, now, viewer, headline, path }: PuzzleProps): ReactElement {
  const { locale } = viewer;
  const isOpen = puzzle.state === 'open';
  const title = ownTitle(puzzle);
  return (
    <div className="two-columns">
      <div className="head">
        {title === '' ? null : <p className="kicker label quiet">{title}</p>}
        <h1>{headline}</h1>
        <p className="how-far">{puzzle.howFar}</p>
      </div>
      <BoardFigure
        fen={puzzle.fen}
        title={headline}
        locale={locale}
        id="d"
        live={
          isOpen
            ? { mode: 'answer', field: 'answer', readAt: linkFor(viewer, `${path}/read`) }
            : { mode: 'show' }
        }
      />
      <div className="body">
        <Corrections puzzle={puzzle} locale={locale} />
        {puzzle.state === 'void' ? null : <ClosingLine puzzle={puzzle} now={now} locale={locale} />}
        {isOpen ? (
          <>
            <AnswerForm path={path} viewer={viewer} puzzle={puzzle} text="" />
            <SchemeLine puzzle={puzzle} viewer={viewer} />
          </>
        ) : (
          <NoAnswers puzzle={puzzle} viewer={viewer} />
        )}
      </div>
    </div>
  );
}

/** How it will be marked, before anybody answers (rule P1). */
function SchemeLine({ puzzle, viewer }: { puzzle: PublicPuzzle; viewer: Viewer }): ReactElement {
  const { locale } = viewer;
  return (
    <p className="hint">
      {say(locale, `pages.scheme-${isFirstMoveEnough(puzzle) ? 'first-move' : puzzle.scheme}`, {
        solved: puzzle.points.solved,
        slower: puzzle.points.slower,
      })}{' '}
      {puzzle.anyDefence ? `${say(locale, 'pages.any-defence')} ` : ''}
      <a href={linkFor(viewer, '/rules')}>{say(locale, 'pages.link-rules')}</a>
    </p>
  );
}

/** Of a whole line there is but one move to write: a mate in two whose mating move may be left out (rule O1). */
function isFirstMoveEnough({ scheme, task, mateWritten }: PublicPuzzle): boolean {
  return scheme === 'full-line' && task.kind === 'mate' && task.moves <= 2 && !mateWritten;
}

/** The form that asks for a line; the check page shows it again with the text that was sent. */
export function AnswerForm(input: {
  path: string;
  viewer: Viewer;
  puzzle: Pick<PublicPuzzle, 'fen' | 'revision'>;
  text: string;
  receipt?: string | null;
}): ReactElement {
  const { locale, picked } = input.viewer;
  const { fen, revision } = input.puzzle;
  const position = parseFen(fen);
  if (!position.ok) throw new Error(`not a position: ${fen}`);
  return (
    <form method="post" action={`${input.path}/read`} className="answer-form">
      <label htmlFor="answer">{say(locale, 'pages.your-line')}</label>
      <textarea
        id="answer"
        name="text"
        defaultValue={input.text}
        maxLength={4000}
        rows={2}
        required
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        aria-describedby="answer-hint"
      />
      <p className="so-far moves" id="so-far" aria-live="polite" hidden />
      {picked === null ? null : <input type="hidden" name="lang" value={picked} />}
      <input type="hidden" name="seen" value={revision} />
      {input.receipt ? <input type="hidden" name="receipt" value={input.receipt} /> : null}
      <button type="submit">{say(locale, 'pages.read-back')}</button>
      <p className="hint" id="answer-hint">
        {say(locale, 'pages.answer-hint', exampleMove(position.value, locale))}
      </p>
    </form>
  );
}

function NoAnswers({ puzzle, viewer }: { puzzle: PublicPuzzle; viewer: Viewer }): ReactElement {
  const { locale } = viewer;
  if (puzzle.state === 'void') return <p className="answer-form">{say(locale, 'pages.void')}</p>;
  if (puzzle.state === 'revealed') {
    return (
      <p className="answer-form">
        <a className="button" href={linkFor(viewer, `/p/${puzzle.slug}/solution`)}>
          {say(locale, 'pages.see-solution')}
        </a>
      </p>
    );
  }
  return <p className="answer-form">{say(locale, 'pages.waits-for-reveal')}</p>;
}
