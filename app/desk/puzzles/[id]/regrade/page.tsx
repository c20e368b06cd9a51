import type { Metadata } from 'next';
import type { ReactElement } from 'react';
import { may } from '#lib/people/may.ts';
import { type RegradeView, showRegrade, watchRegrade } from '#lib/usecases/answers/show-regrade.ts';
import type { Host } from '#lib/usecases/people/admit-member.ts';
import type { DeskPuzzle } from '#lib/usecases/puzzles/open-desk-puzzle.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { requireHost } from '../../../../_auth/require-host.ts';
import { sayMoment } from '../../../../_ui/say-times.ts';
import { ActionForm } from '../../../_parts/action-form.tsx';
import { DeskPage } from '../../../_parts/desk-page.tsx';
import { TextField } from '../../../_parts/field.tsx';
import { type PuzzlePlace, puzzleForFrame, requirePuzzle } from '../../../_parts/find-puzzle.ts';
import { VerificationProgress } from '../../../_parts/verification-progress.tsx';
import { askAction, cancelAction } from './actions.ts';
import { PreviewForm } from './preview-form.tsx';

export async function generateMetadata(): Promise<Metadata> {
  return { title: say((await requireHost()).locale, 'desk.regrade-title') };
}

interface Shown {
  readonly view: RegradeView;
  readonly puzzle: DeskPuzzle;
  readonly host: Host;
}

export default async function RegradePage({ params }: PuzzlePlace): Promise<ReactElement> {
  const host = await requireHost();
  const { locale } = host;
  const puzzle = await requirePuzzle(host, (await params).id);
  const view = await showRegrade(puzzle.record.id);
  return (
    <DeskPage host={host} place="puzzle" puzzle={puzzleForFrame(puzzle)}>
      <div className="regrade">
        <p className="label red">
          <bdi>{puzzle.record.title}</bdi>
        </p>
        <h1>{say(locale, 'desk.regrade-title')}</h1>
        {view.open === null ? (
          <Ask view={view} puzzle={puzzle} host={host} />
        ) : (
          <Open view={view} puzzle={puzzle} host={host} />
        )}
        <Earlier view={view} zone={puzzle.record.zone} locale={locale} />
      </div>
    </DeskPage>
  );
}

/** Why nothing can be asked for here; null where it can. */
function standsAgainst({ view, puzzle, host }: Shown) {
  if (puzzle.record.publishedAt === null) return 'desk.regrade-not-published';
  if (puzzle.record.voidedAt !== null) return 'desk.regrade-void';
  if (view.marked === 0) return 'desk.regrade-intro-none';
  return may(host.role, 'regrade-puzzle') ? null : 'desk.regrade-owner';
}

function Ask(shown: Shown): ReactElement {
  const { puzzle, host } = shown;
  const { locale } = host;
  const against = standsAgainst(shown);
  if (against !== null) return <p>{say(locale, against)}</p>;
  const isRevealed = puzzle.record.revealedAt !== null;
  return (
    <ActionForm action={askAction} submit={say(locale, 'desk.regrade-ask')}>
      <input type="hidden" name="puzzle" value={puzzle.record.id} />
      <p>{say(locale, isRevealed ? 'desk.regrade-intro' : 'desk.regrade-intro-hidden')}</p>
      <TextField
        name="reason"
        label={say(locale, 'desk.regrade-why')}
        hint={say(locale, 'desk.regrade-why-hint')}
        maxLength={300}
        required
      />
    </ActionForm>
  );
}

async function Open({ view, puzzle, host }: Shown): Promise<ReactElement> {
  const { locale } = host;
  const { open } = view;
  const { id, zone } = puzzle.record;
  const isOwner = may(host.role, 'regrade-puzzle');
  return (
    <>
      <p>
        {open?.reason === ''
          ? say(locale, 'desk.regrade-by-program')
          : say(locale, 'desk.regrade-because', { reason: open?.reason ?? '' })}
      </p>
      {open === null ? null : (
        <p className="quiet">
          {open.by ?? say(locale, 'desk.by-program')} · {sayMoment(open.at, zone, locale)}
        </p>
      )}
      {open?.preview == null ? (
        <VerificationProgress
          from={`/desk/puzzles/${id}/regrade/progress`}
          first={{ ...(await watchRegrade(id)), nodes: 0, verdicts: 0 }}
          words={progressWords(open?.state === 'applying', locale)}
          locale={locale}
        />
      ) : (
        <PreviewForm puzzle={id} open={open} preview={open.preview} isOwner={isOwner} locale={locale} />
      )}
      {open === null || !isOwner ? null : (
        <ActionForm action={cancelAction} submit={say(locale, 'desk.regrade-cancel')} isPlain>
          <input type="hidden" name="puzzle" value={id} />
          <input type="hidden" name="regrade" value={open.id} />
        </ActionForm>
      )}
    </>
  );
}

/** Sentences of the progress; their numbers are filled in where they change. */
function progressWords(isWriting: boolean, locale: Locale): Readonly<Record<string, string>> {
  const numbers = { done: '{done}', total: '{total}' };
  return {
    running: say(locale, 'desk.regrade-marking'),
    marking: say(locale, 'desk.regrade-marking'),
    book: say(locale, 'desk.regrade-book'),
    writing: say(locale, 'desk.regrade-writing'),
    parts: say(locale, 'desk.regrade-parts', numbers),
    unknown: say(locale, isWriting ? 'desk.regrade-writing-hint' : 'desk.regrade-unknown'),
    label: say(locale, 'desk.regrade-progress-label'),
  };
}

interface EarlierInput {
  readonly view: RegradeView;
  readonly zone: string;
  readonly locale: Locale;
}

function Earlier({ view, zone, locale }: EarlierInput): ReactElement | null {
  if (view.decided.length === 0) return null;
  return (
    <section className="earlier" aria-labelledby="earlier">
      <h2 id="earlier">{say(locale, 'desk.regrade-earlier')}</h2>
      <ul className="contents">
        {view.decided.map((one) => (
          <li key={one.id}>
            <span className="from-outside">
              {one.reason === '' ? say(locale, 'desk.regrade-by-program') : one.reason} ·{' '}
              {one.state === 'cancelled'
                ? say(locale, 'desk.regrade-cancelled')
                : say(locale, 'desk.regrade-applied', { marks: one.marks })}
            </span>
            <span className="quiet">
              {one.by ?? say(locale, 'desk.by-program')} · {sayMoment(one.at, zone, locale)}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
