import type { Metadata } from 'next';
import type { ReactElement } from 'react';
import { wallTimeIn } from '#lib/kit/zoned-time.ts';
import { now } from '#lib/machine/clock.ts';
import { listDeskPuzzles } from '#lib/usecases/puzzles/list-desk-puzzles.ts';
import { say } from '#lib/words/format.ts';
import { requireHost } from '../../../_auth/require-host.ts';
import { DeskPage } from '../../_parts/desk-page.tsx';
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
      <NewPuzzleForm action={setPuzzleAction} words={formWords(host.locale)} typed={typed} zones={ZONES} />
    </DeskPage>
  );
}

/** A moment as a field for date and time takes it, in a zone: `2026-11-27T18:00`. */
function fieldTime(moment: Date, zone: string): string {
  const { year, month, day, hour, minute } = wallTimeIn(moment, zone);
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${year}-${two(month)}-${two(day)}T${two(hour)}:${two(minute)}`;
}
