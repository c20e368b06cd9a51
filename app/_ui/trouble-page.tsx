import { say } from '#lib/words/format.ts';
import type { Viewer } from '../_http/viewer.ts';
import { renderPage } from './html-page.tsx';

/** What can go wrong in a way that a page must say. */
export type TroubleCode =
  | 'database-away'
  | 'our-mistake'
  | 'not-found'
  | 'foreign-page'
  | 'too-large'
  | 'wrong-type'
  | 'not-json'
  | 'too-many';

/** What the viewer had sent, to be kept and sent again. */
export interface KeptForm {
  readonly action: string;
  readonly fields: Readonly<Record<string, string>>;
}

/** A page that says what went wrong and what to do; a text that was sent stands in it, ready to send again. */
export function troublePage(input: {
  readonly viewer: Viewer;
  readonly code: TroubleCode;
  readonly kept: KeptForm | null;
}): Promise<string> {
  const { viewer, code, kept } = input;
  const { locale } = viewer;
  const title = say(locale, `pages.trouble-${code}-title`);
  return renderPage({
    viewer,
    path: null,
    title,
    masthead: { left: say(locale, 'pages.link-puzzles'), right: '' },
    isPrivate: true,
    children: (
      <div className="stack">
        <h1>{title}</h1>
        <p>{say(locale, `pages.trouble-${code}`)}</p>
        {kept === null ? null : <KeptText kept={kept} viewer={viewer} />}
      </div>
    ),
  });
}

function KeptText({ kept, viewer }: { kept: KeptForm; viewer: Viewer }) {
  const { text = '', ...others } = kept.fields;
  return (
    <form method="post" action={kept.action} className="answer-form">
      <label htmlFor="answer">{say(viewer.locale, 'pages.trouble-kept')}</label>
      <textarea id="answer" name="text" defaultValue={text} maxLength={4000} />
      {Object.entries(others).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <button type="submit">{say(viewer.locale, 'pages.send-again')}</button>
    </form>
  );
}
