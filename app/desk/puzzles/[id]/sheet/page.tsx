import type { Metadata } from 'next';
import type { ReactElement } from 'react';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { findUci } from '#lib/rules/uci.ts';
import { type ShownSheet, showSheet } from '#lib/usecases/readout/show-sheet.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { requireHost } from '../../../../_auth/require-host.ts';
import { shortMove } from '../../../../_ui/board/answer-line.ts';
import { BoardFigure } from '../../../../_ui/board-figure.tsx';
import { lettersOf } from '../../../../_ui/piece-letters.ts';
import { ActionForm } from '../../../_parts/action-form.tsx';
import { DeskPage } from '../../../_parts/desk-page.tsx';
import { AreaField, TextField } from '../../../_parts/field.tsx';
import { type PuzzlePlace, puzzleForFrame, requirePuzzle } from '../../../_parts/find-puzzle.ts';
import { noteReadAction } from './actions.ts';
import { LENGTHS, lengthOf, paceOf } from './sheet-wish.ts';

export async function generateMetadata(): Promise<Metadata> {
  return { title: say((await requireHost()).locale, 'readout.title') };
}

export default async function SheetPage({ params, searchParams }: PuzzlePlace): Promise<ReactElement> {
  const host = await requireHost();
  const { locale } = host;
  const puzzle = await requirePuzzle(host, (await params).id);
  const { record } = puzzle;
  const asked = await searchParams;
  const wish = { length: lengthOf(asked.length), wordsAMinute: paceOf(asked.pace) };
  const shown = await showSheet({ puzzleId: record.id, locale, ...wish });
  if (!shown.ok) {
    return (
      <DeskPage host={host} place="sheet" puzzle={puzzleForFrame(puzzle)}>
        <h1>{say(locale, 'readout.title')}</h1>
        <p>{say(locale, 'readout.not-yet')}</p>
      </DeskPage>
    );
  }
  const { sheet } = shown.value;
  return (
    <DeskPage host={host} place="sheet" puzzle={puzzleForFrame(puzzle)}>
      <article className="readout">
        <h1 className="out-of-sight">{say(locale, 'readout.title')}</h1>
        <div className="readout-columns">
          <dl className="readout-parts">
            {sheet.parts.map((part) => (
              <div key={part.kind}>
                <dt className="label red">{say(locale, `readout.label-${part.kind}`)}</dt>
                <dd>
                  {part.lead === '' ? null : <strong>{part.lead} </strong>}
                  {part.text}
                </dd>
              </div>
            ))}
            <div>
              <dt className="label red">{say(locale, 'readout.label-names')}</dt>
              <dd>
                <Names shown={shown.value} locale={locale} />
              </dd>
            </div>
          </dl>
          <BoardFigure
            fen={shown.value.fen}
            title={record.title}
            locale={locale}
            id="sheet"
            lastMove={shown.value.key}
            caption={keyCaption(shown.value, locale)}
          />
        </div>
        <footer className="readout-foot">
          <p>{sheet.over.text}</p>
          <nav className="label" aria-label={say(locale, 'readout.length-dial')}>
            <span>{say(locale, 'readout.seconds-at-pace', { seconds: sheet.seconds })}</span>
            {LENGTHS.map((length) => (
              <a
                key={length}
                href={`?length=${length}&pace=${wish.wordsAMinute}`}
                aria-current={length === wish.length ? 'true' : undefined}
              >
                {say(locale, 'readout.dial-seconds', { seconds: length })}
              </a>
            ))}
          </nav>
        </footer>
      </article>
      <section className="stack no-print after-sheet">
        <form method="get" className="deed-row">
          <input type="hidden" name="length" value={wish.length} />
          <TextField
            name="pace"
            label={say(locale, 'readout.pace')}
            type="number"
            min={60}
            max={260}
            step={5}
            defaultValue={wish.wordsAMinute}
          />
          <button type="submit" className="button-plain">
            {say(locale, 'readout.pace-set')}
          </button>
        </form>
        <AreaField
          name="as-text"
          label={say(locale, 'readout.copy-as-text')}
          readOnly
          rows={8}
          key={shown.value.text}
          defaultValue={shown.value.text}
        />
        {shown.value.isRead || sheet.names.length === 0 ? (
          <p className="quiet">{shown.value.isRead ? say(locale, 'readout.marked-as-read') : ''}</p>
        ) : (
          <ActionForm action={noteReadAction} submit={say(locale, 'readout.mark-as-read')} isPlain>
            <input type="hidden" name="puzzle" value={record.id} />
            <input type="hidden" name="length" value={wish.length} />
            <input type="hidden" name="pace" value={wish.wordsAMinute} />
          </ActionForm>
        )}
      </section>
    </DeskPage>
  );
}

function Names({ shown, locale }: { shown: ShownSheet; locale: Locale }): ReactElement {
  const { names, unread } = shown.sheet;
  if (names.length === 0) return <p className="quiet">{say(locale, 'readout.no-names')}</p>;
  return (
    <>
      <ul className="readout-names">
        {names.map((one) => (
          <li key={one.solverId}>
            <bdi>{one.name}</bdi>
            {one.beside === '' ? null : <span className="beside">{one.beside}</span>}
            {one.looksLike === null ? null : (
              <span className="beside">{say(locale, 'readout.looks-like', { name: one.looksLike })}</span>
            )}
          </li>
        ))}
      </ul>
      {unread === 0 ? null : <p className="hint">{say(locale, 'readout.names-unread', { count: unread })}</p>}
    </>
  );
}

function keyCaption({ fen, key }: ShownSheet, locale: Locale): string {
  const position = parseFen(fen);
  const move = position.ok ? findUci(position.value, key) : null;
  if (!position.ok || move === null) return '';
  const number = position.value.turn === 'w' ? '1 ' : '1 … ';
  return number + shortMove(position.value, move, lettersOf(locale));
}
