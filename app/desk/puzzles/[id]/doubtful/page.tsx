import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import type { ReactElement } from 'react';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { showDoubtful, type WaitingGroup } from '#lib/usecases/answers/show-doubtful.ts';
import { showLook } from '#lib/usecases/answers/show-look.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { requireHost } from '../../../../_auth/require-host.ts';
import { BoardFigure } from '../../../../_ui/board-figure.tsx';
import { DeskPage } from '../../../_parts/desk-page.tsx';
import {
  type PuzzlePlace,
  puzzleForFrame,
  puzzleNumber,
  requirePuzzle,
} from '../../../_parts/find-puzzle.ts';
import { RegradeNote } from '../regrade-note.tsx';
import { groupLabel } from './group-words.ts';
import { LookQuestion } from './look-question.tsx';
import { Question } from './question.tsx';
import { UndoLast } from './undo-last.tsx';

export async function generateMetadata(): Promise<Metadata> {
  return { title: say((await requireHost()).locale, 'desk.nav-doubtful') };
}

export default async function DoubtfulPage({ params, searchParams }: PuzzlePlace): Promise<ReactElement> {
  const host = await requireHost('settle-doubtful');
  const { locale } = host;
  const puzzle = await requirePuzzle(host, (await params).id);
  const { group, settled } = await searchParams;
  const shown = await showDoubtful({
    puzzleId: puzzle.record.id,
    doubt: typeof group === 'string' ? group : null,
    settled: typeof settled === 'string' ? settled : null,
  });
  if (!shown.ok) notFound();
  const { fen, question, waiting, lookAt } = shown.value;
  const look =
    lookAt === null ? null : await showLook({ puzzleId: puzzle.record.id, answerId: lookAt, locale });
  const others = waiting.filter((one) => one.doubt !== (look === null ? question?.doubt : `look ${lookAt}`));
  const arrow = question?.candidates.find((one) => one.line !== null)?.line?.[0]?.uci ?? null;
  const isLegal = parseFen(fen).ok;
  return (
    <DeskPage host={host} place="doubtful" puzzle={puzzleForFrame(puzzle)}>
      <div className="two-columns doubtful">
        <div className="head">
          <RegradeNote puzzle={puzzle.record.id} locale={locale} />
          {look !== null ? (
            // A question of its own each time: nothing typed for the last one stays in the fields.
            <LookQuestion
              key={lookAt}
              question={look}
              puzzle={puzzle.record.id}
              zone={puzzle.record.zone}
              locale={locale}
            />
          ) : question === null ? (
            <div className="stack">
              <h1>{say(locale, 'desk.doubtful-none')}</h1>
              <p>
                {say(locale, waiting.length > 0 ? 'desk.doubtful-being-marked' : 'desk.doubtful-none-hint')}
              </p>
            </div>
          ) : (
            <Question
              key={question.doubt}
              question={question}
              puzzle={puzzle.record.id}
              zone={puzzle.record.zone}
              fen={fen}
              locale={locale}
            />
          )}
          <UndoLast
            puzzle={puzzle.record.id}
            locale={locale}
            why={await lastSaid(searchParams)}
            look={puzzleNumber(await lastLook(searchParams))}
          />
          {others.length === 0 ? null : (
            <Waiting groups={others} puzzle={puzzle.record.id} fen={fen} locale={locale} />
          )}
        </div>
        {isLegal ? (
          <BoardFigure
            fen={look?.shown.ledger?.fen ?? fen}
            title={puzzle.record.title}
            locale={locale}
            id="doubt"
            lastMove={look === null ? arrow : (look.shown.ledger?.lastMove ?? null)}
          />
        ) : null}
      </div>
    </DeskPage>
  );
}

async function lastSaid(searchParams: PuzzlePlace['searchParams']): Promise<string | null> {
  const { said } = await searchParams;
  return typeof said === 'string' ? said.slice(0, 300) : null;
}

async function lastLook(searchParams: PuzzlePlace['searchParams']): Promise<string> {
  const { looked } = await searchParams;
  return typeof looked === 'string' ? looked : '';
}

interface WaitingInput {
  readonly groups: readonly WaitingGroup[];
  readonly puzzle: number;
  readonly fen: string;
  readonly locale: Locale;
}

function Waiting({ groups, puzzle, fen, locale }: WaitingInput): ReactElement {
  return (
    <table className="waiting">
      <thead>
        <tr>
          <th scope="col">{say(locale, 'desk.doubtful-waiting')}</th>
          <th scope="col">{say(locale, 'desk.doubtful-people')}</th>
        </tr>
      </thead>
      <tbody>
        {groups.map((group) => (
          <tr key={group.doubt}>
            <th scope="row">
              <a href={`/desk/puzzles/${puzzle}/doubtful?group=${encodeURIComponent(group.doubt)}`}>
                {groupLabel(group, fen, locale)}
              </a>
            </th>
            <td>{group.answers}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
