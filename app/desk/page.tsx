import type { Metadata } from 'next';
import type { ReactElement } from 'react';
import type { Host } from '#lib/usecases/people/admit-member.ts';
import {
  type DeskEpisode,
  type DeskPuzzleLine,
  listDeskPuzzles,
} from '#lib/usecases/puzzles/list-desk-puzzles.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { requireHost } from '../_auth/require-host.ts';
import { sayMoment } from '../_ui/say-times.ts';
import { DeskPage } from './_parts/desk-page.tsx';
import { MakeSample, RemoveSample } from './sample-forms.tsx';

export async function generateMetadata(): Promise<Metadata> {
  const host = await requireHost();
  return { title: say(host.locale, 'desk.nav-episodes') };
}

interface Input {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export default async function EpisodesPage({ searchParams }: Input): Promise<ReactElement> {
  const host = await requireHost();
  const { locale } = host;
  const { episodes, hasSample, isProgramSetAside } = await listDeskPuzzles(host.showId);
  const { trouble } = await searchParams;
  const isOwner = host.role === 'owner';
  return (
    <DeskPage host={host} place="episodes">
      <div className="stack">
        <div className="head-and-deed">
          <h1>{say(locale, 'desk.nav-episodes')}</h1>
          {isOwner ? (
            <a className="button button-fit" href="/desk/puzzles/new">
              {say(locale, 'desk.new-puzzle')}
            </a>
          ) : null}
        </div>
        {trouble === 'no-right' ? (
          <p className="problem" role="alert">
            {say(locale, 'desk.no-right')}
          </p>
        ) : null}
        {isProgramSetAside ? (
          <p className="problem" role="alert">
            {say(locale, 'desk.program-set-aside')}
          </p>
        ) : null}
        {episodes.length === 0 ? <Empty host={host} /> : null}
        {episodes.map((episode) => (
          <Episode key={episode.id} episode={episode} host={host} />
        ))}
        {hasSample && isOwner ? <RemoveSample locale={locale} /> : null}
      </div>
    </DeskPage>
  );
}

function Empty({ host }: { host: Host }): ReactElement {
  const { locale } = host;
  return (
    <section className="stack">
      <p>{say(locale, 'desk.empty')}</p>
      {host.role === 'owner' ? <MakeSample locale={locale} /> : null}
    </section>
  );
}

function Episode({ episode, host }: { episode: DeskEpisode; host: Host }): ReactElement {
  const { locale } = host;
  return (
    <section className="episode">
      <h2>
        <span className="label red">{say(locale, 'desk.episode-label', { number: episode.number })}</span>{' '}
        <bdi>{episode.title}</bdi>
        {episode.isSample ? <span className="label quiet"> {say(locale, 'desk.sample')}</span> : null}
      </h2>
      {episode.lines.length === 0 ? null : (
        <ul className="contents">
          {episode.lines.map((line) => (
            <PuzzleLine key={line.id} line={line} host={host} />
          ))}
        </ul>
      )}
    </section>
  );
}

function PuzzleLine({ line, host }: { line: DeskPuzzleLine; host: Host }): ReactElement {
  const { locale } = host;
  return (
    <li>
      <a href={`/desk/puzzles/${line.id}`}>
        <bdi>{line.title}</bdi>
      </a>
      <span className="quiet">
        {stateWords(line, locale)}
        {line.solvers > 0 ? ` · ${say(locale, 'desk.people', { count: line.solvers })}` : ''}
        {line.hasRegrade ? (
          <>
            {' · '}
            <a href={`/desk/puzzles/${line.id}/regrade`}>{say(locale, 'desk.regrade-in-list')}</a>
          </>
        ) : null}
      </span>
    </li>
  );
}

/** "Open until ...", "Opens ...": the state, with the moment that ends it. */
function stateWords({ state, opensAt, closesAt, zone }: DeskPuzzleLine, locale: Locale): string {
  if (state === 'open' && closesAt !== null)
    return say(locale, 'desk.open-until', { closes: sayMoment(closesAt, zone, locale) });
  if (state === 'published' && opensAt !== null)
    return say(locale, 'desk.opens-at', { opens: sayMoment(opensAt, zone, locale) });
  return say(locale, `desk.state-${state}`);
}
