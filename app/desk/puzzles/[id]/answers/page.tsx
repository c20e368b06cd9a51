import type { Metadata } from 'next';
import type { ReactElement } from 'react';
import { type AnswersPage, listAnswers } from '#lib/usecases/answers/list-answers.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { outcomeLabel } from '#lib/words/outcome-label.ts';
import { requireHost } from '../../../../_auth/require-host.ts';
import { DeskPage } from '../../../_parts/desk-page.tsx';
import {
  type PuzzlePlace,
  puzzleForFrame,
  puzzleNumber,
  requirePuzzle,
} from '../../../_parts/find-puzzle.ts';

export async function generateMetadata(): Promise<Metadata> {
  return { title: say((await requireHost()).locale, 'desk.nav-answers') };
}

export default async function AnswersListPage({ params, searchParams }: PuzzlePlace): Promise<ReactElement> {
  const host = await requireHost();
  const { locale } = host;
  const puzzle = await requirePuzzle(host, (await params).id);
  const asked = await searchParams;
  const below = typeof asked.below === 'string' ? puzzleNumber(asked.below) || null : null;
  const outcome = typeof asked.outcome === 'string' ? asked.outcome : null;
  const page = await listAnswers({ puzzleId: puzzle.record.id, below, outcome });
  const at = `/desk/puzzles/${puzzle.record.id}/answers`;
  return (
    <DeskPage host={host} place="answers" puzzle={puzzleForFrame(puzzle)}>
      <div className="stack">
        <h1>{say(locale, 'desk.nav-answers')}</h1>
        <Counts page={page} at={at} locale={locale} />
        {page.lines.length === 0 ? (
          <p>{say(locale, 'desk.answers-none')}</p>
        ) : (
          <Lines page={page} at={at} locale={locale} />
        )}
        {page.next === null ? null : (
          <p>
            <a href={`${at}?below=${page.next}${page.outcome === null ? '' : `&outcome=${page.outcome}`}`}>
              {say(locale, 'desk.older')}
            </a>
          </p>
        )}
      </div>
    </DeskPage>
  );
}

function Counts({ page, at, locale }: { page: AnswersPage; at: string; locale: Locale }): ReactElement {
  return (
    <nav className="links filters" aria-label={say(locale, 'desk.answers-by-outcome')}>
      <a href={at} aria-current={page.outcome === null ? 'true' : undefined}>
        {say(locale, 'desk.answers-all')}
      </a>
      {page.counts.map(({ outcome, count }) => (
        <a
          key={outcome}
          href={`${at}?outcome=${outcome}`}
          aria-current={page.outcome === outcome ? 'true' : undefined}
        >
          {say(locale, `desk.outcome-${outcome}`)} <span className="figures">{count}</span>
        </a>
      ))}
    </nav>
  );
}

function Lines({ page, at, locale }: { page: AnswersPage; at: string; locale: Locale }): ReactElement {
  return (
    <div className="scroll-box">
      <table className="preview">
        <thead>
          <tr>
            <th scope="col">{say(locale, 'desk.comments-head-author')}</th>
            <th scope="col">{say(locale, 'desk.comments-head-text')}</th>
            <th scope="col">{say(locale, 'desk.doubtful-outcome')}</th>
            <th scope="col" className="number">
              {say(locale, 'desk.doubtful-points')}
            </th>
          </tr>
        </thead>
        <tbody>
          {page.lines.map((line) => (
            <tr key={line.id} className={line.standing === 'counted' ? undefined : 'quiet'}>
              <th scope="row">
                <a href={`${at}/${line.id}`}>
                  <bdi>{line.name ?? say(locale, 'desk.comments-no-author')}</bdi>
                </a>
              </th>
              <td className="from-outside" dir="auto">
                {line.text}
              </td>
              <td>
                {line.outcome === null
                  ? say(locale, 'desk.not-marked')
                  : outcomeLabel({ ...line, outcome: line.outcome }, locale)}
                {line.isOverruled ? ` · ${say(locale, 'desk.overruled')}` : ''}
                {line.standing === 'counted' || line.standing === 'no-answer'
                  ? ''
                  : ` · ${say(locale, `desk.standing-${line.standing}`)}`}
              </td>
              <td className="number figures">{line.points ?? ''}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
