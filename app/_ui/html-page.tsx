// The frame of every public page: doctype, head, masthead, foot. Plain HTML; the one script is the board,
// and only where a page has one.

import type { ReactElement, ReactNode } from 'react';
import { say } from '#lib/words/format.ts';
import { LOCALES } from '#lib/words/locale.ts';
import { builtFile } from '../_http/built-files.ts';
import { linkFor, type Viewer } from '../_http/viewer.ts';

/** What a page says of itself. */
export interface PageInput {
  readonly viewer: Viewer;
  /** Path of this page, for the link to the other language; null where the page came from a form. */
  readonly path: string | null;
  readonly title: string;
  /** Left and right of the masthead, as in a printed column. */
  readonly masthead: { readonly left: string; readonly right: string };
  readonly hasBoard?: boolean;
  /** Seconds after which the page asks for itself anew. */
  readonly description?: string;
  /** Address of a picture for link previews. */
  readonly preview?: string;
  readonly isPrivate?: boolean;
  readonly children: ReactNode;
}

/** The whole document as text. */
export async function renderPage(input: PageInput): Promise<string> {
  const { renderToStaticMarkup } = await import('react-dom/server');
  return `<!doctype html>${renderToStaticMarkup(<Page {...input} />)}`;
}

function Page(input: PageInput): ReactElement {
  const { viewer } = input;
  return (
    <html lang={viewer.locale}>
      <head>
        <meta charSet="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{input.title}</title>
        {input.description === undefined ? null : <meta name="description" content={input.description} />}
        {input.isPrivate === true ? <meta name="robots" content="noindex" /> : null}
        {input.preview === undefined ? null : <meta property="og:image" content={input.preview} />}
        {input.preview === undefined ? null : <meta property="og:title" content={input.title} />}
        <meta name="color-scheme" content="light dark" />
        <meta name="theme-color" content="#fbf8f0" media="(prefers-color-scheme: light)" />
        <meta name="theme-color" content="#12171f" media="(prefers-color-scheme: dark)" />
        <link
          rel="preload"
          href={builtFile('literata-latin-wght-normal.woff2')}
          as="font"
          type="font/woff2"
          crossOrigin="anonymous"
        />
        <link rel="stylesheet" href={builtFile('public.css')} />
        <link rel="icon" href="/icon.svg" type="image/svg+xml" />
        {input.hasBoard === true ? <script type="module" src={builtFile('board.js')} /> : null}
      </head>
      <body>
        <a className="skip" href="#main">
          {say(viewer.locale, 'pages.skip')}
        </a>
        <div className="sheet">
          <Masthead {...input} />
          <main id="main">{input.children}</main>
          <Colophon {...input} />
        </div>
      </body>
    </html>
  );
}

function Masthead({ viewer, masthead }: PageInput): ReactElement {
  return (
    <header>
      <div className="masthead label">
        <a href={linkFor(viewer, '/')}>{masthead.left}</a>
        <span>{masthead.right}</span>
      </div>
      <div className="masthead-rule" />
    </header>
  );
}

function Colophon({ viewer, path }: PageInput): ReactElement {
  const { locale } = viewer;
  return (
    <footer className="colophon label">
      <a href={linkFor(viewer, '/')}>{say(locale, 'pages.link-puzzles')}</a>
      <a href={linkFor(viewer, '/standings')}>{say(locale, 'pages.link-standings')}</a>
      <a href={linkFor(viewer, '/rules')}>{say(locale, 'pages.link-rules')}</a>
      {path === null
        ? null
        : LOCALES.filter((other) => other !== locale).map((other) => (
            <a key={other} href={linkFor(viewer, path, { lang: other })} lang={other} hrefLang={other}>
              {say(other, 'pages.own-name')}
            </a>
          ))}
    </footer>
  );
}
