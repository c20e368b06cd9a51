import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import type { ReactElement } from 'react';
import { showDraft } from '#lib/usecases/puzzles/show-draft.ts';
import { say } from '#lib/words/format.ts';
import { requireHost } from '../../../../_auth/require-host.ts';
import { ownTitle } from '../../../../_ui/puzzle-heads.ts';
import { DeskPage } from '../../../_parts/desk-page.tsx';
import { fieldTime } from '../../../_parts/field-time.ts';
import { type PuzzlePlace, puzzleForFrame, requirePuzzle } from '../../../_parts/find-puzzle.ts';
import { ZONES } from '../../../_parts/zones.ts';
import { setPuzzleAction } from '../../new/actions.ts';
import { formWords } from '../../new/form-words.ts';
import { NewPuzzleForm } from '../../new/new-puzzle-form.tsx';
import { firstLook } from '../../new/read-terms.ts';

export async function generateMetadata(): Promise<Metadata> {
  return { title: say((await requireHost('create-puzzle')).locale, 'desk.change-puzzle') };
}

/** The form of a new puzzle, filled in with a draft. A published puzzle has none: its terms stand. */
export default async function ChangePage({ params }: PuzzlePlace): Promise<ReactElement> {
  const host = await requireHost('create-puzzle');
  const puzzle = await requirePuzzle(host, (await params).id);
  const draft = await showDraft(puzzle.record);
  if (draft === null) redirect(`/desk/puzzles/${puzzle.record.id}`);
  const { texts, title, opensAt, closesAt, zone } = draft;
  const { fen, task } = puzzle.record.terms;
  const typed = {
    ...texts,
    // Left empty, the title follows the task.
    title: ownTitle({ turn: fen.split(' ')[1] === 'b' ? 'b' : 'w', task, title }),
    zone,
    opensAt: opensAt === null ? '' : fieldTime(opensAt, zone),
    closesAt: closesAt === null ? '' : fieldTime(closesAt, zone),
  };
  return (
    <DeskPage host={host} place="puzzle" puzzle={puzzleForFrame(puzzle)}>
      <h1>{say(host.locale, 'desk.change-puzzle')}</h1>
      <NewPuzzleForm
        action={setPuzzleAction}
        words={formWords(host.locale)}
        typed={typed}
        look={firstLook(typed, host.locale)}
        zones={ZONES}
      />
    </DeskPage>
  );
}
