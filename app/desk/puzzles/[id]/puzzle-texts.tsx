import type { ReactElement } from 'react';
import type { DeskPuzzleView } from '#lib/usecases/puzzles/show-desk-puzzle.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { sayMoment } from '../../../_ui/say-times.ts';
import { AreaField } from '../../_parts/field.tsx';

interface Input {
  readonly view: DeskPuzzleView;
  readonly headline: string;
  readonly locale: Locale;
}

/** What goes out with the episode: the link, the pictures, texts for the description and the pinned comment. */
export function PuzzleTexts({ view, headline, locale }: Input): ReactElement {
  const { record, address } = view;
  const closes = record.closesAt === null ? '' : sayMoment(record.closesAt, record.zone, locale);
  const description = say(locale, 'desk.text-description', { headline, address, closes });
  const pinned = say(locale, 'desk.text-pinned', { headline, address, closes });
  const path = `/p/${record.slug}`;
  return (
    <section className="stack" aria-labelledby="texts">
      <h2 id="texts">{say(locale, 'desk.texts')}</h2>
      <p>
        <a href={path} className="secret-link">
          {address}
        </a>
      </p>
      <ul className="links">
        <li>
          <a href={`${path}/diagram.svg`}>{say(locale, 'desk.picture-svg')}</a>
        </li>
        <li>
          <a href={`${path}/diagram.png`}>{say(locale, 'desk.picture-png')}</a>
        </li>
      </ul>
      <AreaField
        name="text-description"
        label={say(locale, 'desk.text-description-label')}
        readOnly
        rows={4}
        defaultValue={description}
      />
      <AreaField
        name="text-pinned"
        label={say(locale, 'desk.text-pinned-label')}
        readOnly
        rows={3}
        defaultValue={pinned}
      />
    </section>
  );
}
