import type { ReactElement } from 'react';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import { findUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import type { ShownSolution } from '#lib/usecases/puzzles/show-solution.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { spokenMove } from '#lib/words/spoken-moves.ts';
import { linkFor, type Viewer } from '../_http/viewer.ts';
import { BoardFigure } from './board-figure.tsx';
import { Corrections } from './corrections.tsx';
import { FirstMovesTable } from './first-moves-table.tsx';
import { renderPage } from './html-page.tsx';
import { type LineLinks, PlayableLines } from './playable-lines.tsx';
import { episodeLabel, taskHeadline } from './puzzle-heads.ts';
import { type Step, stepAt } from './solution-steps.ts';
import { WhyNot } from './why-not.tsx';

/** What the solution page shows; `at` names the step on the board: line and ply. */
export interface SolutionInput {
  readonly viewer: Viewer;
  readonly shown: ShownSolution;
  readonly at: { readonly line: number; readonly ply: number; readonly other: number | null } | null;
}

/** The solution: the answer in words, every line playable, *Why not?*, the first moves of all, the roll. */
export function solutionPage(input: SolutionInput): Promise<string> {
  const { viewer, shown } = input;
  const { locale } = viewer;
  const { puzzle } = shown;
  const title = answerInWords(shown, locale);
  return renderPage({
    viewer,
    path: `/p/${puzzle.slug}/solution`,
    title: `${title} · ${puzzle.showName}`,
    masthead: { left: say(locale, 'pages.solution'), right: episodeLabel(puzzle, locale) },
    hasBoard: true,
    children: <Solution {...input} title={title} />,
  });
}

/** "Rook to h1": the first move of the main line, said aloud. */
function answerInWords(shown: ShownSolution, locale: Locale): string {
  const start = parseFen(shown.puzzle.fen);
  const uci = shown.lines[0]?.moves[0] ?? shown.keys[0];
  const move = start.ok && uci !== undefined ? findUci(start.value, uci) : null;
  if (!start.ok || move === null) return taskHeadline(shown.puzzle, locale);
  const words = spokenMove(start.value, move, locale);
  return words.charAt(0).toLocaleUpperCase(locale) + words.slice(1);
}

function Solution(input: SolutionInput & { readonly title: string }): ReactElement {
  const { viewer, shown, title, at } = input;
  const { locale } = viewer;
  const { puzzle } = shown;
  const start = parseFen(puzzle.fen);
  if (!start.ok) throw new Error(`not a position: ${puzzle.fen}`);
  const path = `/p/${puzzle.slug}/solution`;
  const links: LineLinks = {
    to: (line, ply, other) => {
      const step = { line: String(line), ply: String(ply) };
      return linkFor(viewer, path, other === undefined ? step : { ...step, other: String(other) }, '#board');
    },
  };
  const step = stepOf(input, start.value);
  return (
    <div className="two-columns">
      <div className="head">
        <p className="kicker label quiet">{taskHeadline(puzzle, locale)}</p>
        <h1>{title}</h1>
      </div>
      <BoardFigure
        fen={writeFen(step.position)}
        title={step.uci === null ? taskHeadline(puzzle, locale) : say(locale, 'pages.diagram-in-line')}
        locale={locale}
        id="d"
        lastMove={step.uci}
        live={{
          mode: 'try',
          startFen: puzzle.fen,
          tryAt: linkFor(viewer, path, { try: 'MOVE' }, '#why-not'),
        }}
      />
      <div className="body stack">
        <Corrections puzzle={puzzle} locale={locale} />
        <PlayableLines lines={shown.lines} start={start.value} at={at} links={links} locale={locale} />
        <p className="links label">
          <a href={linkFor(viewer, path, {}, '#board')} data-fen={puzzle.fen} data-uci="">
            {say(locale, 'pages.to-start')}
          </a>
          <a href={linkFor(viewer, `/p/${puzzle.slug}`)}>{say(locale, 'pages.to-puzzle')}</a>
        </p>
        <WhyNot shown={shown} start={start.value} viewer={viewer} path={path} />
        <FirstMovesTable shown={shown} start={start.value} viewer={viewer} path={path} />
        <Roll shown={shown} locale={locale} />
      </div>
    </div>
  );
}

/** The step on the board: asked by address; a move asked about, with its answer; else the diagram and the key as an arrow. */
function stepOf({ shown, at }: SolutionInput, start: Position): Step {
  if (at !== null) {
    const line = shown.lines[at.line];
    const reply = at.other === null ? undefined : line?.sameAs[at.other];
    const moves = reply === undefined ? (line?.moves ?? []) : [...(line?.moves.slice(0, 1) ?? []), reply];
    return stepAt(start, moves, at.ply);
  }
  if (shown.asked !== null) {
    const moves = [shown.asked.move, ...shown.asked.line.slice(0, 1)];
    return stepAt(start, moves, moves.length);
  }
  return { position: start, uci: shown.lines[0]?.moves[0] ?? null };
}

function Roll({ shown, locale }: { shown: ShownSolution; locale: Locale }): ReactElement {
  const { names, namedCount, namelessCount } = shown.roll;
  return (
    <section className="section">
      <h2 className="label">{say(locale, 'pages.roll')}</h2>
      <p>{say(locale, 'pages.roll-count', { count: shown.solved })}</p>
      {names.length === 0 ? null : (
        <ul className="roll">
          {names.map((name, i) => (
            <li key={`${name}${String(i)}`}>
              <bdi>{name}</bdi>
            </li>
          ))}
        </ul>
      )}
      {namedCount > names.length ? (
        <p className="quiet">{say(locale, 'pages.roll-more', { count: namedCount - names.length })}</p>
      ) : null}
      {namelessCount === 0 ? null : (
        <p className="quiet">{say(locale, 'pages.roll-nameless', { count: namelessCount })}</p>
      )}
    </section>
  );
}
