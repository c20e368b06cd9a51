import type { Metadata } from 'next';
import type { ReactElement } from 'react';
import { showLog } from '#lib/usecases/people/show-log.ts';
import { isMessageKey } from '#lib/words/catalogue/catalogue.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { requireHost } from '../../_auth/require-host.ts';
import { sayMoment } from '../../_ui/say-times.ts';
import { DeskPage } from '../_parts/desk-page.tsx';
import { puzzleNumber } from '../_parts/find-puzzle.ts';

export async function generateMetadata(): Promise<Metadata> {
  return { title: say((await requireHost()).locale, 'desk.nav-log') };
}

interface Input {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export default async function LogPage({ searchParams }: Input): Promise<ReactElement> {
  const host = await requireHost();
  const { locale, zone } = host;
  const { below } = await searchParams;
  const page = await showLog({
    showId: host.showId,
    below: typeof below === 'string' ? puzzleNumber(below) || null : null,
  });
  return (
    <DeskPage host={host} place="log">
      <div className="stack">
        <h1>{say(locale, 'desk.nav-log')}</h1>
        <p className="quiet">{say(locale, 'desk.log-intro')}</p>
        <div className="scroll-box">
          <table className="log-table">
            <thead>
              <tr>
                <th scope="col" className="number">
                  {say(locale, 'desk.log-number')}
                </th>
                <th scope="col">{say(locale, 'desk.log-what')}</th>
                <th scope="col">{say(locale, 'desk.log-who')}</th>
                <th scope="col">{say(locale, 'desk.log-where')}</th>
                <th scope="col">{say(locale, 'desk.log-when')}</th>
              </tr>
            </thead>
            <tbody>
              {page.lines.map((line) => (
                <tr key={line.id}>
                  <td className="number">{line.id}</td>
                  <th scope="row">
                    {kindWords(line.kind, locale)}
                    {line.details === '{}' ? null : (
                      <span className="log-details">{plainDetails(line.details)}</span>
                    )}
                  </th>
                  <td>{line.who ?? say(locale, 'desk.by-program')}</td>
                  <td>
                    {line.puzzleId === null ? null : (
                      <a
                        href={`/desk/puzzles/${line.puzzleId}${line.answerId === null ? '' : `/answers/${line.answerId}`}`}
                      >
                        {line.answerId === null
                          ? say(locale, 'desk.puzzle-number', { number: line.puzzleId })
                          : say(locale, 'desk.answer-number', { number: line.answerId })}
                      </a>
                    )}
                  </td>
                  <td>{sayMoment(line.at, zone, locale)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        {page.next === null ? null : (
          <p>
            <a href={`/desk/log?below=${page.next}`}>{say(locale, 'desk.older')}</a>
          </p>
        )}
      </div>
    </DeskPage>
  );
}

/** The numbers of a deed, "added: 11 · refused: 0"; empty lists say nothing. */
function plainDetails(json: string): string {
  const details: Readonly<Record<string, unknown>> = JSON.parse(json);
  return Object.entries(details)
    .filter(([, value]) => !Array.isArray(value) || value.length > 0)
    .map(([name, value]) => `${name}: ${typeof value === 'object' ? JSON.stringify(value) : value}`)
    .join(' · ');
}

/** The deed in words; a code that the catalogue lacks stands as it is. */
function kindWords(kind: string, locale: Locale): string {
  const key = `desk.log-${kind}`;
  return isMessageKey(key) ? say(locale, key) : kind;
}
