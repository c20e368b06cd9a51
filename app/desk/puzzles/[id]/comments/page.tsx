import type { Metadata } from 'next';
import type { ReactElement } from 'react';
import { now } from '#lib/machine/clock.ts';
import { listPuzzleImports, type PuzzleImport } from '#lib/usecases/answers/list-imports.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { requireHost } from '../../../../_auth/require-host.ts';
import { sayMoment } from '../../../../_ui/say-times.ts';
import { DeskPage } from '../../../_parts/desk-page.tsx';
import { fieldTime } from '../../../_parts/field-time.ts';
import { type PuzzlePlace, puzzleForFrame, requirePuzzle } from '../../../_parts/find-puzzle.ts';
import { importAction } from './actions.ts';
import { CommentsForm } from './comments-form.tsx';
import { commentsWords } from './comments-words.ts';

export async function generateMetadata(): Promise<Metadata> {
  return { title: say((await requireHost()).locale, 'desk.nav-comments') };
}

export default async function CommentsPage({ params }: PuzzlePlace): Promise<ReactElement> {
  const host = await requireHost('import-comments');
  const { locale } = host;
  const puzzle = await requirePuzzle(host, (await params).id);
  const imports = await listPuzzleImports(puzzle.record.id);
  const isPublished = puzzle.record.publishedAt !== null;
  return (
    <DeskPage host={host} place="comments" puzzle={puzzleForFrame(puzzle)}>
      <div className="stack">
        <h1>{say(locale, 'desk.nav-comments')}</h1>
        {isPublished ? (
          <CommentsForm
            action={importAction}
            words={commentsWords(locale)}
            puzzle={puzzle.record.id}
            exportedAt={fieldTime(now(), puzzle.record.zone)}
            source={imports[0]?.sourceName ?? say(locale, 'desk.comments-source-default')}
          />
        ) : (
          <p>{say(locale, 'desk.comments-not-yet')}</p>
        )}
        {imports.length === 0 ? null : (
          <section className="stack">
            <h2>{say(locale, 'desk.imports')}</h2>
            <ul className="contents">
              {imports.map((one) => (
                <ImportLine key={one.id} one={one} zone={host.zone} locale={locale} />
              ))}
            </ul>
          </section>
        )}
      </div>
    </DeskPage>
  );
}

function ImportLine({
  one,
  zone,
  locale,
}: {
  one: PuzzleImport;
  zone: string;
  locale: Locale;
}): ReactElement {
  return (
    <li>
      <span>
        <bdi>{one.sourceName}</bdi>
        {one.fileName === null ? '' : ` · ${one.fileName}`}
        <span className="quiet"> {sayMoment(one.createdAt, zone, locale)}</span>
      </span>
      <span className="figures">
        {one.state === 'done'
          ? say(locale, 'desk.import-done', {
              added: one.added,
              known: one.known,
              edited: one.edited,
              refused: one.refused,
            })
          : say(locale, `desk.import-${one.state}`)}
      </span>
    </li>
  );
}
