import type { ReactElement } from 'react';
import type { MessageKey } from '#lib/words/catalogue/catalogue.ts';
import { say } from '#lib/words/format.ts';
import type { Viewer } from '../_http/viewer.ts';
import { renderPage } from './html-page.tsx';

const SECTIONS: readonly { readonly head: MessageKey; readonly points: readonly MessageKey[] }[] = [
  {
    head: 'rules-page.reading',
    points: [
      'rules-page.reading-any',
      'rules-page.reading-shown',
      'rules-page.reading-gaps',
      'rules-page.reading-corrections',
      'rules-page.reading-claims',
    ],
  },
  {
    head: 'rules-page.judging',
    points: [
      'rules-page.judging-verified',
      'rules-page.judging-any-way',
      'rules-page.judging-replies',
      'rules-page.judging-far',
      'rules-page.judging-branches',
    ],
  },
  {
    head: 'rules-page.points',
    points: [
      'rules-page.points-full',
      'rules-page.points-key',
      'rules-page.points-kinder',
      'rules-page.points-never-less',
      'rules-page.points-last',
    ],
  },
  {
    head: 'rules-page.after',
    points: [
      'rules-page.after-reveal',
      'rules-page.after-comments',
      'rules-page.after-look',
      'rules-page.after-regrade',
      'rules-page.after-correction',
    ],
  },
  {
    head: 'rules-page.privacy',
    points: ['rules-page.privacy-kept', 'rules-page.privacy-withdraw', 'rules-page.privacy-law'],
  },
];

/** The marking rules in short form, for those who are marked. */
export function rulesPage({
  viewer,
  showName,
}: {
  viewer: Viewer;
  showName: string | null;
}): Promise<string> {
  const { locale } = viewer;
  const title = say(locale, 'pages.link-rules');
  return renderPage({
    viewer,
    path: '/rules',
    title,
    masthead: { left: showName ?? 'Tailpiece', right: title },
    children: <Rules viewer={viewer} title={title} />,
  });
}

function Rules({ viewer, title }: { viewer: Viewer; title: string }): ReactElement {
  const { locale } = viewer;
  return (
    <div className="stack margin-heads">
      <h1>{title}</h1>
      <section>
        <h2>{say(locale, 'rules-page.outcomes')}</h2>
        <OutcomeTable viewer={viewer} />
      </section>
      {SECTIONS.map(({ head, points }) => (
        <section key={head}>
          <h2>{say(locale, head)}</h2>
          <ul className="rules">
            {points.map((point) => (
              <li key={point}>{say(locale, point)}</li>
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}

const OUTCOMES = ['solved', 'slower', 'unfinished', 'slipped', 'wrong', 'impossible', 'unclear'] as const;

function OutcomeTable({ viewer }: { viewer: Viewer }): ReactElement {
  const { locale } = viewer;
  return (
    <table>
      <caption className="out-of-sight">{say(locale, 'rules-page.outcomes')}</caption>
      <tbody>
        {OUTCOMES.map((outcome) => (
          <tr key={outcome}>
            <th scope="row">{say(locale, `rules-page.label-${outcome}`)}</th>
            <td>{say(locale, `rules-page.means-${outcome}`)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
