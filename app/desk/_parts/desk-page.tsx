import type { ReactElement, ReactNode } from 'react';
import type { Host } from '#lib/usecases/people/admit-member.ts';
import { say } from '#lib/words/format.ts';
import { formToken } from '../../_auth/require-host.ts';

/** Where in the desk a page stands. */
export type DeskPlace =
  | 'episodes'
  | 'puzzle'
  | 'comments'
  | 'doubtful'
  | 'sheet'
  | 'answers'
  | 'log'
  | 'members'
  | 'schemes';

interface Input {
  readonly host: Host;
  readonly place: DeskPlace;
  /** The puzzle that the page is about, with how many groups of answers wait for a person. */
  readonly puzzle?: { readonly id: number; readonly episodeNumber: number; readonly doubtful: number };
  readonly children: ReactNode;
  /** Reading at a distance: the sheet has its own masthead. */
  readonly isWide?: boolean;
}

/** The frame of a desk page: where one can go, whose desk it is, the page itself. */
export async function DeskPage({ host, place, puzzle, children }: Input): Promise<ReactElement> {
  const { locale } = host;
  return (
    <div className="desk">
      <a className="skip" href="#main">
        {say(locale, 'pages.skip')}
      </a>
      <header>
        <div className="masthead label">
          <nav aria-label={say(locale, 'desk.nav')}>
            {linksFor(puzzle).map(({ to, key, goal }) => (
              <a key={key} href={to} aria-current={goal === place ? 'page' : undefined}>
                {say(locale, `desk.nav-${key}`)}
                {key === 'doubtful' && puzzle !== undefined && puzzle.doubtful > 0
                  ? ` ${puzzle.doubtful}`
                  : ''}
              </a>
            ))}
          </nav>
          <span>
            {puzzle === undefined
              ? host.showName
              : say(locale, 'desk.show-and-number', { show: host.showName, number: puzzle.episodeNumber })}
          </span>
        </div>
        <div className="masthead-rule" />
      </header>
      <main id="main">{children}</main>
      <footer className="colophon label">
        <a href="/desk/log">{say(locale, 'desk.nav-log')}</a>
        {host.role === 'owner' ? <a href="/desk/schemes">{say(locale, 'desk.nav-schemes')}</a> : null}
        {host.role === 'owner' ? <a href="/desk/members">{say(locale, 'desk.nav-members')}</a> : null}
        <a href="/">{say(locale, 'desk.nav-public')}</a>
        <SignOut token={await formToken()} label={say(locale, 'desk.sign-out', { name: host.signInName })} />
      </footer>
    </div>
  );
}

function linksFor(puzzle: Input['puzzle']) {
  const episodes = { to: '/desk', key: 'episodes', goal: 'episodes' } as const;
  if (puzzle === undefined) return [episodes];
  const at = `/desk/puzzles/${puzzle.id}`;
  return [
    episodes,
    { to: at, key: 'puzzle', goal: 'puzzle' },
    { to: `${at}/comments`, key: 'comments', goal: 'comments' },
    { to: `${at}/doubtful`, key: 'doubtful', goal: 'doubtful' },
    { to: `${at}/sheet`, key: 'sheet', goal: 'sheet' },
    { to: `${at}/answers`, key: 'answers', goal: 'answers' },
  ] as const;
}

function SignOut({ token, label }: { token: string | null; label: string }): ReactElement {
  if (token === null) return <a href="/api/auth/signout">{label}</a>;
  return (
    <form method="post" action="/api/auth/signout">
      <input type="hidden" name="csrfToken" value={token} />
      <input type="hidden" name="callbackUrl" value="/desk/sign-in" />
      <button type="submit" className="button-link label">
        {label}
      </button>
    </form>
  );
}
