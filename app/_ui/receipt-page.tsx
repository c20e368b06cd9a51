import type { ReactElement } from 'react';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import type { ShownReceipt } from '#lib/usecases/answers/show-receipt.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { linkFor, type Viewer } from '../_http/viewer.ts';
import { BoardFigure } from './board-figure.tsx';
import { ZonedTime } from './closing-line.tsx';
import { Corrections } from './corrections.tsx';
import { renderPage } from './html-page.tsx';
import { LedgerTable, MarkWords, outcomeHeadline } from './mark-view.tsx';
import { OtherLines } from './other-lines.tsx';
import { lettersOf } from './piece-letters.ts';
import { LineText } from './printed-line.tsx';
import { episodeLabel, taskHeadline } from './puzzle-heads.ts';
import { AnswerForm } from './puzzle-page.tsx';
import { QuotedText } from './quoted-text.tsx';
import { printLine, readingsToShow } from './read-line.ts';
import { type RefusedLook, SecondLook } from './second-look.tsx';

/** What the receipt page shows; `token` is the secret end of its address. */
export interface ReceiptInput {
  readonly viewer: Viewer;
  readonly token: string;
  readonly siteAddress: string;
  readonly shown: ShownReceipt;
  /** A second look that was refused, with what was typed; left out otherwise. */
  readonly refusedLook?: RefusedLook;
}

/** The receipt: what was sent and how it was read; after the reveal the mark. */
export function receiptPage(input: ReceiptInput): Promise<string> {
  const { viewer, shown } = input;
  const { locale } = viewer;
  const { puzzle } = shown;
  const right = [
    episodeLabel(puzzle, locale),
    puzzle.state === 'revealed' ? say(locale, 'pages.revealed') : '',
  ]
    .filter((part) => part !== '')
    .join(' · ');
  const title = receiptTitle(input);
  return renderPage({
    viewer,
    path: `/r/${input.token}`,
    title: `${title} · ${puzzle.showName}`,
    masthead: { left: say(locale, 'pages.receipt'), right },
    isPrivate: true,
    hasBoard: canChange(shown),
    children: <Receipt {...input} title={title} />,
  });
}

function receiptTitle({ shown, viewer }: ReceiptInput): string {
  if (shown.isWithdrawn) return say(viewer.locale, 'pages.receipt-withdrawn-title');
  if (shown.mark !== null) return outcomeHeadline(shown.mark, viewer.locale);
  return say(viewer.locale, 'pages.receipt-title');
}

function canChange(shown: ShownReceipt): boolean {
  return shown.puzzle.state === 'open' && !shown.isWithdrawn;
}

function Receipt(input: ReceiptInput & { readonly title: string }): ReactElement {
  const { shown, viewer, title } = input;
  const { locale } = viewer;
  if (shown.isWithdrawn) {
    return (
      <div className="stack">
        <h1>{title}</h1>
        <p>{say(locale, 'pages.receipt-withdrawn')}</p>
      </div>
    );
  }
  return (
    <div className="two-columns">
      <div className="head stack">
        <h1>{title}</h1>
        {shown.mark === null ? <Sent {...input} /> : <MarkWords mark={shown.mark} locale={locale} />}
      </div>
      <ReceiptBoard {...input} />
      <div className="body stack">
        <Corrections puzzle={shown.puzzle} locale={locale} />
        {shown.asItStands === null ? null : (
          <p>
            {say(locale, 'pages.receipt-former')}{' '}
            <a href={linkFor(viewer, `/p/${shown.puzzle.slug}`)}>
              {say(locale, 'pages.receipt-former-link')}
            </a>
          </p>
        )}
        {shown.mark === null || shown.mark.ledger.rows.length === 0 ? null : (
          <LedgerTable ledger={shown.mark.ledger} locale={locale} turn={shown.puzzle.turn} />
        )}
        {shown.mark === null && shown.look === null ? (
          <Refused {...input} />
        ) : (
          <SecondLook
            look={shown.look}
            token={input.token}
            zone={shown.puzzle.zone}
            viewer={viewer}
            refused={input.refusedLook ?? null}
          />
        )}
        <Answer {...input} />
        <Deeds {...input} />
      </div>
    </div>
  );
}

/** Where no second look can be asked for, a form that was sent all the same is told why. */
function Refused({ refusedLook }: ReceiptInput): ReactElement | null {
  if (refusedLook === undefined) return null;
  return (
    <p className="problem" role="alert">
      {refusedLook.problem}
    </p>
  );
}

/** After the reveal the position that tells the story; before it, where the one reading surely ends. */
function ReceiptBoard({ shown, viewer }: ReceiptInput): ReactElement | null {
  const { locale } = viewer;
  const title = taskHeadline(shown.puzzle, locale);
  if (shown.mark !== null) {
    const { fen, lastMove } = shown.mark.ledger;
    return <BoardFigure fen={fen} title={title} locale={locale} id="d" lastMove={lastMove} />;
  }
  const start = parseFen(shown.puzzle.fen);
  const [only, ...others] = shown.read.readings;
  if (!start.ok || only === undefined || others.length > 0) {
    return <BoardFigure fen={shown.puzzle.fen} title={title} locale={locale} id="d" />;
  }
  const line = printLine(start.value, only.line, lettersOf(locale));
  return (
    <BoardFigure
      fen={writeFen(line.position)}
      title={title}
      locale={locale}
      id="d"
      lastMove={line.lastMove}
    />
  );
}

/** Before the reveal: the same sentences for every answer, right or wrong. */
function Sent({ shown, viewer }: ReceiptInput): ReactElement {
  const { locale } = viewer;
  const { puzzle } = shown;
  return (
    <>
      <p>
        {say(locale, 'pages.receipt-received')}{' '}
        <ZonedTime moment={shown.receivedAt} zone={puzzle.zone} locale={locale} />
        {'. '}
        {say(locale, shown.isLate ? 'pages.receipt-late' : 'pages.receipt-in-time')}
      </p>
      {shown.isReplaced ? <p>{say(locale, 'pages.receipt-replaced')}</p> : null}
      {puzzle.state === 'void' ? <p>{say(locale, 'pages.void')}</p> : null}
      <p>{say(locale, puzzle.state === 'revealed' ? 'pages.receipt-not-marked' : 'pages.receipt-waits')}</p>
    </>
  );
}

function Answer({ shown, viewer }: ReceiptInput): ReactElement {
  const { locale } = viewer;
  const start = parseFen(shown.puzzle.fen);
  if (!start.ok) throw new Error(`not a position: ${shown.puzzle.fen}`);
  const meant = shown.meant?.join(' ') ?? null;
  const chosen =
    shown.read.readings.length === 1
      ? shown.read.readings[0]
      : shown.read.readings.find((one) => one.line.map((move) => move.uci).join(' ') === meant);
  return (
    <>
      <h2 className="label">{say(locale, 'pages.receipt-text')}</h2>
      <QuotedText text={shown.text} line={chosen?.line ?? []} />
      {shown.name === null ? null : (
        <p className="quiet">
          {say(locale, 'pages.receipt-name')} <bdi>{shown.name}</bdi>
        </p>
      )}
      <h2 className="label">{say(locale, 'pages.receipt-read')}</h2>
      <Readings shown={shown} start={start.value} viewer={viewer} meant={meant} />
    </>
  );
}

interface ReadingsProps {
  readonly shown: ShownReceipt;
  readonly start: Position;
  readonly viewer: Viewer;
  readonly meant: string | null;
}

function Readings({ shown, start, viewer, meant }: ReadingsProps): ReactElement {
  const { locale } = viewer;
  const { lines, isTurned } = readingsToShow(shown.read);
  if (lines.length === 0) return <p>{nothingRead(shown, locale)}</p>;
  const isOpen = lines.length > 1 && !isTurned;
  return (
    <>
      {isTurned && shown.mark === null ? <p>{say(locale, 'pages.check-turned')}</p> : null}
      {isOpen ? (
        <p>{say(locale, meant === null ? 'pages.receipt-left-open' : 'pages.receipt-several')}</p>
      ) : null}
      <ul className="plain">
        {lines.slice(0, 8).map((reading) => {
          const value = reading.line.map((move) => move.uci).join(' ');
          return (
            <li key={value}>
              <LineText line={printLine(start, reading.line, lettersOf(locale))} locale={locale} />
              {value === meant ? <span className="label"> {say(locale, 'pages.receipt-meant')}</span> : null}
              <OtherLines reading={reading} start={start} locale={locale} />
            </li>
          );
        })}
      </ul>
    </>
  );
}

/** Why no line stands on the receipt. A first move that cannot be played is told by the characters that were written. */
function nothingRead({ read, text }: ShownReceipt, locale: Locale): string {
  const span = read.readings[0]?.impossibleSpan ?? null;
  if (span === null) return say(locale, 'pages.receipt-unread');
  return say(locale, 'pages.receipt-impossible', { move: text.slice(...span).slice(0, 60) });
}

/** Who changes an answer to a puzzle that was corrected answers the puzzle as it stands now. */
function PuzzleNow({ shown, viewer }: Pick<ReceiptInput, 'shown' | 'viewer'>): ReactElement | null {
  const { locale } = viewer;
  if (shown.asItStands === null) return null;
  const title = taskHeadline(shown.asItStands, locale);
  return <BoardFigure fen={shown.asItStands.fen} title={title} locale={locale} id="now" caption={title} />;
}

function Deeds({ shown, viewer, token, siteAddress }: ReceiptInput): ReactElement {
  const { locale } = viewer;
  const address = `${siteAddress}/r/${token}`;
  return (
    <>
      <section className="stack no-print">
        <h2 className="label">{say(locale, 'pages.receipt-link')}</h2>
        <p className="secret-link">
          <a href={linkFor(viewer, `/r/${token}`)}>{address}</a>
        </p>
        <p className="hint">{say(locale, 'pages.receipt-link-hint')}</p>
      </section>
      {canChange(shown) ? (
        <details>
          <summary>{say(locale, 'pages.receipt-change')}</summary>
          <PuzzleNow shown={shown} viewer={viewer} />
          <AnswerForm
            puzzle={shown.asItStands ?? shown.puzzle}
            path={`/p/${shown.puzzle.slug}`}
            viewer={viewer}
            text={shown.text}
            receipt={token}
          />
        </details>
      ) : null}
      <details>
        <summary>{say(locale, 'pages.receipt-withdraw')}</summary>
        <form method="post" action={`/r/${token}/withdraw`} className="answer-form">
          <p>{say(locale, 'pages.receipt-withdraw-hint')}</p>
          {viewer.picked === null ? null : <input type="hidden" name="lang" value={viewer.picked} />}
          <button type="submit" className="button-plain">
            {say(locale, 'pages.receipt-withdraw-now')}
          </button>
        </form>
      </details>
      <p className="links label">
        <a href={linkFor(viewer, `/p/${shown.puzzle.slug}`)}>{say(locale, 'pages.to-puzzle')}</a>
        {shown.puzzle.state === 'revealed' ? (
          <a href={linkFor(viewer, `/p/${shown.puzzle.slug}/solution`)}>
            {say(locale, 'pages.play-through')}
          </a>
        ) : null}
      </p>
    </>
  );
}
