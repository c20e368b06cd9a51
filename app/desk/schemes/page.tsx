import type { Metadata } from 'next';
import type { ReactElement } from 'react';
import { type ShownScheme, showSchemes } from '#lib/usecases/puzzles/edit-scheme.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { requireHost } from '../../_auth/require-host.ts';
import { ActionForm } from '../_parts/action-form.tsx';
import { DeskPage } from '../_parts/desk-page.tsx';
import { TextField } from '../_parts/field.tsx';
import { editSchemeAction } from './actions.ts';

export async function generateMetadata(): Promise<Metadata> {
  return { title: say((await requireHost('change-show')).locale, 'desk.nav-schemes') };
}

export default async function SchemesPage(): Promise<ReactElement> {
  const host = await requireHost('change-show');
  const { locale } = host;
  return (
    <DeskPage host={host} place="schemes">
      <div className="stack">
        <h1>{say(locale, 'desk.nav-schemes')}</h1>
        <p>{say(locale, 'desk.schemes-intro')}</p>
        {(await showSchemes(host.showId)).map((scheme) => (
          <Scheme key={scheme.name} scheme={scheme} locale={locale} />
        ))}
      </div>
    </DeskPage>
  );
}

function Scheme({ scheme, locale }: { scheme: ShownScheme; locale: Locale }): ReactElement {
  const { name, version, solved, slower, part, twoOfThree } = scheme;
  const example = say(locale, `desk.scheme-example-${name}`, { part: twoOfThree, solved });
  return (
    <section aria-labelledby={name} className="stack">
      <h2 id={name}>
        {say(locale, `desk.scheme-head-${name}`)}{' '}
        <span className="quiet">{say(locale, 'desk.scheme-version', { version })}</span>
      </h2>
      <p>{example}</p>
      <ActionForm action={editSchemeAction} submit={say(locale, 'desk.scheme-save')}>
        <input type="hidden" name="scheme" value={name} />
        <div className="side-by-side">
          <NumberField
            id={`${name}-solved`}
            name="solved"
            value={solved}
            label={say(locale, 'desk.scheme-solved')}
          />
          <NumberField
            id={`${name}-slower`}
            name="slower"
            value={slower}
            label={say(locale, 'desk.scheme-slower')}
          />
          {part === null ? null : (
            <>
              <NumberField
                id={`${name}-base`}
                name="base"
                value={part.base}
                label={say(locale, 'desk.scheme-base')}
              />
              <NumberField
                id={`${name}-part`}
                name="perLine"
                value={part.perLine}
                label={say(locale, 'desk.scheme-per-line')}
              />
            </>
          )}
        </div>
      </ActionForm>
    </section>
  );
}

function NumberField(input: { id: string; name: string; value: number; label: string }): ReactElement {
  const { id, name, value, label } = input;
  return (
    <TextField
      id={id}
      name={name}
      label={label}
      type="number"
      min={0}
      max={100}
      required
      defaultValue={value}
    />
  );
}
