import type { ReactElement } from 'react';
import type { PublicPuzzle } from '#lib/puzzle/public-puzzle.ts';
import type { Reading, ReadResult } from '#lib/reading/reading.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { linkFor, type Viewer } from '../_http/viewer.ts';
import { BoardFigure } from './board-figure.tsx';
import { renderPage } from './html-page.tsx';
import { OtherLines } from './other-lines.tsx';
import { lettersOf } from './piece-letters.ts';
import { LineText } from './printed-line.tsx';
import { episodeLabel } from './puzzle-heads.ts';
import { QuotedText } from './quoted-text.tsx';
import { plainLine, printLine, readingsToShow } from './read-line.ts';

/** What the check page shows. */
export interface CheckInput {
  readonly puzzle: PublicPuzzle;
  readonly viewer: Viewer;
  readonly text: string;
  readonly read: ReadResult;
  readonly clientKey: string;
  /** Token of the receipt whose answer is changed; null for a first answer. */
  readonly receipt: string | null;
  readonly name: string;
  /** A sentence about what was refused, above everything else. */
  readonly problem?: string;
  /** The puzzle was amended since the sender's page was made (rule A6). */
  readonly isCorrected?: boolean;
  /** A recent puzzle of the show that the text answers in full (rule R15). */
  readonly elsewhere?: { readonly slug: string; readonly title: string } | null;
}

const MOST_SHOWN = 8;

/** The check page: what was read, on boards and in print; then a name, and the button that sends. */
export function checkPage(input: CheckInput): Promise<string> {
  const { puzzle, viewer } = input;
  const title = checkTitle(input.read, viewer.locale);
  return renderPage({
    viewer,
    path: null,
    title: `${title} · ${puzzle.showName}`,
    masthead: { left: puzzle.showName, right: episodeLabel(puzzle, viewer.locale) },
    isPrivate: true,
    children: <Check {...input} title={title} />,
  });
}

function checkTitle(read: ReadResult, locale: Locale): string {
  const { lines, isTurned } = readingsToShow(read);
  if (isTurned) return say(locale, 'pages.check-title-turned');
  if (lines.length === 0) return say(locale, 'pages.check-title-none');
  return say(locale, lines.length > 1 ? 'pages.check-title-several' : 'pages.check-title');
}

function Check(input: CheckInput & { readonly title: string }): ReactElement {
  const { puzzle, read, title } = input;
  const start = parseFen(puzzle.fen);
  if (!start.ok) throw new Error(`not a position: ${puzzle.fen}`);
  const props = { ...input, start: start.value };
  const readings = readingsToShow(read).lines.slice(0, MOST_SHOWN);
  const [only] = readings.length === 1 ? readings : [];
  return (
    <div className="two-columns">
      <div className="head stack">
        <h1>{title}</h1>
        {input.problem === undefined ? null : (
          <p className="problem" role="alert">
            {input.problem}
          </p>
        )}
        <Remarks {...input} />
        {only === undefined ? null : <ReadingText {...props} reading={only} />}
      </div>
      {only === undefined ? null : <ReadingBoard {...props} reading={only} id="r" />}
      <div className={readings.length > 1 ? 'whole stack' : 'body stack'}>
        {read.kind === 'chatter' ? null : <SendForm {...props} readings={readings} />}
        <YourText {...input} />
      </div>
    </div>
  );
}

function YourText(input: CheckInput): ReactElement {
  const { read, text, viewer } = input;
  return (
    <section>
      <h2 className="label">{say(viewer.locale, 'pages.check-text')}</h2>
      <QuotedText text={text} line={read.readings.length === 1 ? (read.readings[0]?.line ?? []) : []} />
      <ChangeForm {...input} isOpen={readingsToShow(read).lines.length === 0} />
    </section>
  );
}

function Remarks({ puzzle, read, text, viewer, elsewhere, isCorrected }: CheckInput): ReactElement {
  const { locale } = viewer;
  const { lines, isTurned } = readingsToShow(read);
  const [first] = read.readings;
  const only = lines.length === 1 && !isTurned ? first : undefined;
  const impossible = first?.impossibleSpan;
  const sentences = [
    read.isCut ? say(locale, 'pages.check-cut') : null,
    read.kind === 'chatter' ? say(locale, 'pages.check-chatter') : null,
    isTurned ? say(locale, 'pages.check-turned') : null,
    read.kind !== 'chatter' && lines.length === 0 ? nothingRead(read, text, locale) : null,
    read.kind === 'unreadable' && read.firstUnread !== null
      ? say(locale, 'pages.check-first-unread', { move: cut(text.slice(...read.firstUnread)) })
      : null,
    lines.length > 1 && !isTurned ? say(locale, 'pages.check-several') : null,
    only?.isSolverOnly ? say(locale, 'pages.check-solver-only') : null,
    only !== undefined && impossible
      ? say(locale, 'pages.check-impossible', { move: cut(text.slice(...impossible)) })
      : null,
  ].filter((sentence) => sentence !== null);
  return (
    <>
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {isCorrected ? (
        <p className="problem">
          {say(locale, 'pages.check-corrected')}{' '}
          <a href={linkFor(viewer, `/p/${puzzle.slug}`)}>{say(locale, 'pages.check-corrected-link')}</a>
        </p>
      ) : null}
      {elsewhere ? (
        <p>
          {say(locale, 'pages.check-elsewhere', { title: elsewhere.title })}{' '}
          <a href={linkFor(viewer, `/p/${elsewhere.slug}`)}>{say(locale, 'pages.check-elsewhere-link')}</a>
        </p>
      ) : null}
    </>
  );
}

/** Why there is no line to show: the first move cannot be played, or nothing is a move. */
function nothingRead(read: ReadResult, text: string, locale: Locale): string {
  const span = read.readings[0]?.impossibleSpan ?? null;
  return span === null
    ? say(locale, 'pages.check-none')
    : say(locale, 'pages.check-impossible-first', { move: cut(text.slice(...span)) });
}

function SendForm(
  input: CheckInput & { readonly start: Position; readonly readings: readonly Reading[] },
): ReactElement {
  const { puzzle, viewer, readings } = input;
  const { locale } = viewer;
  return (
    <form method="post" action={`/p/${puzzle.slug}/answer`} className="answer-form stack">
      {readings.length < 2 ? null : (
        <fieldset>
          <legend className="out-of-sight">{say(locale, 'pages.check-title-several')}</legend>
          <div className="readings">
            {readings.map((reading, i) => (
              <ReadingChoice key={movesOf(reading)} {...input} reading={reading} id={`r${i}`} />
            ))}
          </div>
          <label className="choice">
            <input type="radio" name="reading" value="" defaultChecked />
            {say(locale, 'pages.check-leave-open')}
          </label>
        </fieldset>
      )}
      <NameField name={input.name} locale={locale} />
      <HiddenFields {...input} />
      <button type="submit">{say(locale, 'pages.send')}</button>
      <p className="hint">{say(locale, 'pages.check-nothing-stored')}</p>
    </form>
  );
}

function NameField({ name, locale }: { name: string; locale: Locale }): ReactElement {
  return (
    <div>
      <label htmlFor="name">{say(locale, 'pages.name')}</label>
      <input
        type="text"
        className="field"
        id="name"
        name="name"
        defaultValue={name}
        maxLength={160}
        autoComplete="nickname"
        aria-describedby="name-hint"
      />
      <p className="hint" id="name-hint">
        {say(locale, 'pages.name-hint')}
      </p>
    </div>
  );
}

function HiddenFields({ puzzle, text, clientKey, receipt, viewer }: CheckInput): ReactElement {
  return (
    <>
      <input type="hidden" name="seen" value={puzzle.revision} />
      <input type="hidden" name="text" value={text} />
      <input type="hidden" name="key" value={clientKey} />
      {receipt === null ? null : <input type="hidden" name="receipt" value={receipt} />}
      {viewer.picked === null ? null : <input type="hidden" name="lang" value={viewer.picked} />}
    </>
  );
}

interface ReadingProps extends CheckInput {
  readonly reading: Reading;
  readonly start: Position;
}

/** A reading among several: the choice, then its board. */
function ReadingChoice(props: ReadingProps & { readonly id: string }): ReactElement {
  return (
    <div className="reading">
      <label className="choice">
        <input type="radio" name="reading" value={movesOf(props.reading)} />
        <LineText
          line={printLine(props.start, props.reading.line, lettersOf(props.viewer.locale))}
          locale={props.viewer.locale}
        />
      </label>
      <OtherLines reading={props.reading} start={props.start} locale={props.viewer.locale} />
      <ReadingBoard {...props} />
    </div>
  );
}

function ReadingText({ reading, start, viewer }: ReadingProps): ReactElement {
  const { locale } = viewer;
  return (
    <div>
      <p>
        <LineText line={printLine(start, reading.line, lettersOf(locale))} locale={locale} />
      </p>
      <OtherLines reading={reading} start={start} locale={locale} />
    </div>
  );
}

function ReadingBoard({ reading, start, viewer, id }: ReadingProps & { readonly id: string }): ReactElement {
  const { locale } = viewer;
  const line = printLine(start, reading.line, lettersOf(locale));
  const last = line.moves.findLast((one) => one.kind === 'move' && one.uci === line.lastMove);
  const title =
    last?.kind === 'move'
      ? say(locale, 'pages.diagram-after', { move: plainLine({ ...line, moves: [last] }) })
      : say(locale, 'pages.diagram-start');
  return (
    <BoardFigure
      fen={writeFen(line.position)}
      title={title}
      locale={locale}
      id={id}
      lastMove={line.lastMove}
    />
  );
}

/** A reading as the form sends it back: its moves, UCI. */
function movesOf(reading: Reading): string {
  return reading.line.map((move) => move.uci).join(' ');
}

function ChangeForm(input: CheckInput & { readonly isOpen: boolean }): ReactElement {
  const { puzzle, viewer, text } = input;
  const { locale } = viewer;
  return (
    <details open={input.isOpen}>
      <summary>{say(locale, 'pages.check-change')}</summary>
      <form method="post" action={`/p/${puzzle.slug}/read`} className="answer-form">
        <label htmlFor="answer">{say(locale, 'pages.your-line')}</label>
        <textarea id="answer" name="text" defaultValue={text} maxLength={4000} rows={2} required />
        <input type="hidden" name="seen" value={puzzle.revision} />
        {input.receipt === null ? null : <input type="hidden" name="receipt" value={input.receipt} />}
        {viewer.picked === null ? null : <input type="hidden" name="lang" value={viewer.picked} />}
        <button type="submit">{say(locale, 'pages.read-back')}</button>
      </form>
    </details>
  );
}

function cut(text: string): string {
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}
