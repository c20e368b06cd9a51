import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import type { ReactElement } from 'react';
import { showDeskPuzzle } from '#lib/usecases/puzzles/show-desk-puzzle.ts';
import { say } from '#lib/words/format.ts';
import { requireHost } from '../../../_auth/require-host.ts';
import { BoardFigure } from '../../../_ui/board-figure.tsx';
import { ownTitle, taskHeadline } from '../../../_ui/puzzle-heads.ts';
import { sayMoment } from '../../../_ui/say-times.ts';
import { DeskPage } from '../../_parts/desk-page.tsx';
import { type PuzzlePlace, puzzleForFrame, puzzleNumber } from '../../_parts/find-puzzle.ts';
import { NewWays } from './new-ways.tsx';
import { PuzzleDeeds } from './puzzle-deeds.tsx';
import { PuzzleTexts } from './puzzle-texts.tsx';
import { SoundnessReport } from './soundness-report.tsx';

export async function generateMetadata({ params }: PuzzlePlace): Promise<Metadata> {
  const host = await requireHost();
  const view = await showDeskPuzzle({ ...host, puzzleId: puzzleNumber((await params).id) });
  return { title: view?.record.title ?? '' };
}

export default async function DeskPuzzlePage({ params }: PuzzlePlace): Promise<ReactElement> {
  const host = await requireHost();
  const { locale } = host;
  const view = await showDeskPuzzle({ ...host, puzzleId: puzzleNumber((await params).id) });
  if (view === null) notFound();
  const { record, state } = view;
  const { fen, task } = record.terms;
  const asked = { turn: fen.split(' ')[1] === 'b' ? 'b' : 'w', task } as const;
  const headline = taskHeadline(asked, locale);
  const title = ownTitle({ ...asked, title: record.title });
  return (
    <DeskPage host={host} place="puzzle" puzzle={puzzleForFrame(view)}>
      <div className="two-columns">
        <div className="head">
          <p className="label red kicker">{say(locale, `desk.state-${state}`)}</p>
          <h1>
            <bdi>{title || headline}</bdi>
          </h1>
          {title === '' ? null : <p className="how-far">{headline}</p>}
          <p className="quiet">
            {record.opensAt === null || record.closesAt === null
              ? null
              : say(locale, 'desk.from-to', {
                  opens: sayMoment(record.opensAt, record.zone, locale),
                  closes: sayMoment(record.closesAt, record.zone, locale),
                })}
          </p>
        </div>
        <BoardFigure fen={fen} title={headline} locale={locale} id="desk" />
        <div className="body stack">
          <NewWays view={view} host={host} />
          {/* Before publication the report is what to read; after it, what to do and what to copy. */}
          {record.publishedAt === null ? <SoundnessReport view={view} locale={locale} /> : null}
          <PuzzleDeeds view={view} host={host} />
          {record.publishedAt === null ? null : (
            <>
              <PuzzleTexts view={view} headline={headline} locale={locale} />
              <SoundnessReport view={view} locale={locale} />
            </>
          )}
        </div>
      </div>
    </DeskPage>
  );
}
