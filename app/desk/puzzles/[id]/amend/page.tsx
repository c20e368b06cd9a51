import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import type { ReactElement } from 'react';
import { type AmendmentView, showAmendment } from '#lib/usecases/puzzles/show-amendment.ts';
import { say } from '#lib/words/format.ts';
import { requireHost } from '../../../../_auth/require-host.ts';
import { ownTitle } from '../../../../_ui/puzzle-heads.ts';
import { DeskPage } from '../../../_parts/desk-page.tsx';
import { type PuzzlePlace, puzzleForFrame, requirePuzzle } from '../../../_parts/find-puzzle.ts';
import { firstLook } from '../../new/read-terms.ts';
import { proposeAction } from './actions.ts';
import { AmendForm } from './amend-form.tsx';
import { amendWords } from './amend-words.ts';
import { AmendmentInTheMaking } from './amendment-in-the-making.tsx';

export async function generateMetadata(): Promise<Metadata> {
  return { title: say((await requireHost('amend-puzzle')).locale, 'desk.amend') };
}

/** Corrects a published puzzle: the form, or the correction in the making. A draft is simply changed, a void puzzle stays. */
export default async function AmendPage({ params }: PuzzlePlace): Promise<ReactElement> {
  const host = await requireHost('amend-puzzle');
  const { locale } = host;
  const puzzle = await requirePuzzle(host, (await params).id);
  const puzzleId = puzzle.record.id;
  const view = await showAmendment({ showId: host.showId, puzzleId, locale });
  if (view === null) redirect(`/desk/puzzles/${puzzleId}`);
  const { amendment } = view;
  const typed = fieldsOf(view);
  return (
    <DeskPage host={host} place="puzzle" puzzle={puzzleForFrame(view)}>
      <p className="kicker label quiet">
        <a href={`/desk/puzzles/${puzzleId}`}>
          <bdi>{view.record.title}</bdi>
        </a>
      </p>
      <h1>{say(locale, 'desk.amend')}</h1>
      {amendment === null ? (
        <>
          <div className="stack column">
            <p>{say(locale, 'desk.amend-intro')}</p>
            {view.state === 'revealed' ? <p>{say(locale, 'desk.amend-revealed')}</p> : null}
            {view.typed.note === '' ? null : (
              <p className="note">{say(locale, 'desk.amend-cancelled-hint')}</p>
            )}
          </div>
          <AmendForm
            action={proposeAction}
            words={amendWords(locale)}
            typed={typed}
            look={firstLook(typed, locale)}
          />
        </>
      ) : (
        <AmendmentInTheMaking view={view} amendment={amendment} locale={locale} />
      )}
    </DeskPage>
  );
}

/** The terms as fields of the form, by name. */
function fieldsOf({ record, typed }: AmendmentView): Record<string, string> {
  const { terms, title, howFar, note } = typed;
  const { fen, task } = terms;
  const ticks = (['anyDefence', 'mateWritten', 'isStrict'] as const).filter((name) => terms[name]);
  return {
    puzzle: String(record.id),
    position: fen,
    published: terms.published.join('\n'),
    task: task.kind,
    moves: task.kind === 'mate' ? String(task.moves) : '',
    // Left empty, the title follows the task.
    title: ownTitle({ turn: fen.split(' ')[1] === 'b' ? 'b' : 'w', task, title }),
    howFar: howFar ?? '',
    note,
    solverMoves: terms.solverMoves === null ? '' : String(terms.solverMoves),
    winBound: String(terms.winBound),
    slipBound: String(terms.slipBound),
    drawBound: String(terms.drawBound),
    drawSlipBound: String(terms.drawSlipBound),
    ...Object.fromEntries(ticks.map((name) => [name, 'on'])),
  };
}
