import type { ReactElement, ReactNode } from 'react';
import type { Locale } from '#lib/words/locale.ts';

/** The frame of a desk page before sign-in: one narrow column. */
export function OpenPage({
  locale,
  title,
  children,
}: {
  locale: Locale;
  title: string;
  children: ReactNode;
}): ReactElement {
  return (
    <div className="desk desk-open" lang={locale}>
      <header>
        <div className="masthead label">
          <a href="/">Tailpiece</a>
        </div>
        <div className="masthead-rule" />
      </header>
      <main id="main" className="stack">
        <h1>{title}</h1>
        {children}
      </main>
    </div>
  );
}
