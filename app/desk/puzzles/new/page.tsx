import type { Metadata } from 'next';
import type { ReactElement } from 'react';
import { now } from '#lib/machine/clock.ts';
import { listDeskPuzzles } from '#lib/usecases/puzzles/list-desk-puzzles.ts';
import { say } from '#lib/words/format.ts';
import { requireHost } from '../../../_auth/require-host.ts';
import { DeskPage } from '../../_parts/desk-page.tsx';
import { fieldTime } from '../../_parts/field-time.ts';
import { ZONES } from '../../_parts/zones.ts';
import { setPuzzleAction } from './actions.ts';
import { formWords } from './form-words.ts';
import { NewPuzzleForm } from './new-puzzle-form.tsx';

export async function generateMetadata(): Promise<Metadata> {
  return { title: say((await requireHost('create-puzzle')).locale, 'desk.new-puzzle') };
}

export default async function NewPuzzlePage(): Promise<ReactElement> {
  const host = await requireHost('create-puzzle');
  const { nextNumber } = await listDeskPuzzles(host.showId);
  const typed = {
    task: 'mate',
    moves: '3',
    scheme: 'full-line',
    episodeNumber: String(nextNumber),
    opensAt: fieldTime(now(), host.zone),
    closesAt: `${fieldTime(new Date(now().getTime() + 7 * 86_400_000), host.zone).slice(0, 10)}T18:00`,
    zone: host.zone,
  };
  return (
    <DeskPage host={host} place="episodes">
      <h1>{say(host.locale, 'desk.new-puzzle')}</h1>
      <NewPuzzleForm
        action={setPuzzleAction}
        words={formWords(host.locale)}
        typed={typed}
        look={null}
        zones={ZONES}
      />
    </DeskPage>
  );
}
