import type { ReactElement } from 'react';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { findUci } from '#lib/rules/uci.ts';
import type { LedgerRow } from '#lib/usecases/answers/receipt-ledger.ts';
import type { ShownMark } from '#lib/usecases/answers/show-receipt.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { type Labelled, outcomeLabel } from '#lib/words/outcome-label.ts';
import { shortMove } from './board/answer-line.ts';
import { lettersOf } from './piece-letters.ts';
import { unbroken } from './unbroken.ts';

/** "Slips at move 2": the outcome as the headline of a receipt. */
export function outcomeHeadline(mark: Labelled, locale: Locale): string {
  return outcomeLabel(mark, locale);
}

/** A mark in words: points, the reason, and why it does not count where it does not. */
export function MarkWords({ mark, locale }: { mark: ShownMark; locale: Locale }): ReactElement {
  return (
    <>
      <p className="lead">
        {say(locale, 'pages.points-of', { points: mark.points, most: mark.mostPoints })}{' '}
        {unbroken(mark.explanation)}
      </p>
      <NotCounted mark={mark} locale={locale} />
      {mark.programOutcome === null ? null : (
        <p className="quiet">
          {say(locale, 'pages.host-decided', {
            outcome: outcomeHeadline({ outcome: mark.programOutcome, atMove: mark.atMove }, locale),
          })}
        </p>
      )}
    </>
  );
}

function NotCounted({ mark, locale }: { mark: ShownMark; locale: Locale }): ReactElement | null {
  switch (mark.standing) {
    case 'late':
      return <p>{say(locale, 'pages.receipt-late')}</p>;
    case 'replaced':
      return <p>{say(locale, 'pages.receipt-replaced')}</p>;
    case 'reply':
      return <p>{say(locale, 'pages.receipt-reply')}</p>;
    default:
      return null;
  }
}

/** Every move of the line that was taken, with its verdict. */
export function LedgerTable({
  ledger,
  locale,
  turn,
}: {
  ledger: ShownMark['ledger'];
  locale: Locale;
  turn: 'w' | 'b';
}): ReactElement {
  return (
    <table className="ledger">
      <caption className="out-of-sight">{say(locale, 'pages.ledger')}</caption>
      <tbody>
        {ledger.rows.map((row, ply) => (
          <tr key={row.fen}>
            <th scope="row" className={row.by === 'solver' ? 'moves solver' : 'moves'}>
              {numberOf(ply, turn)} {moveText(row, locale)}
            </th>
            <td className={row.verdict === 'slips' ? 'verdict red' : 'verdict'}>
              {verdictText(row, locale)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function numberOf(ply: number, turn: 'w' | 'b'): string {
  const at = ply + (turn === 'w' ? 0 : 1);
  return `${1 + Math.floor(at / 2)}${at % 2 === 0 ? '' : ' …'}`;
}

function moveText(row: LedgerRow, locale: Locale): string {
  const position = parseFen(row.fen);
  const move = position.ok ? findUci(position.value, row.uci) : null;
  return position.ok && move !== null ? shortMove(position.value, move, lettersOf(locale)) : row.uci;
}

function verdictText(row: LedgerRow, locale: Locale): string {
  if (row.by === 'defender') return row.isWritten ? '' : say(locale, 'pages.ledger-filled');
  if (row.verdict === null) return say(locale, 'pages.ledger-not-verified');
  if (row.isBenefit) return say(locale, 'pages.ledger-benefit');
  if (row.verdict === 'holds' && row.mateIn === 1) return say(locale, 'pages.ledger-mate');
  if ((row.verdict === 'holds' || row.verdict === 'slower') && row.mateIn !== null) {
    return say(locale, `pages.ledger-${row.verdict}-mate`, { moves: row.mateIn - 1 });
  }
  return say(locale, `pages.ledger-${row.verdict}`);
}
