import { isLocale, type Locale, pickLocale } from '#lib/words/locale.ts';

/** Who asks, as far as a public page knows: a language, and whether it was picked by hand. */
export interface Viewer {
  readonly locale: Locale;
  /** Picked by a link: every link of the page carries it on. Null where the browser's wish decides. */
  readonly picked: Locale | null;
}

/** The viewer's language: `?lang=` (or a form's own field) before Accept-Language. */
export function viewerOf(request: Request, field?: string): Viewer {
  const wish = field ?? new URL(request.url).searchParams.get('lang') ?? '';
  const picked = isLocale(wish) ? wish : null;
  return { locale: picked ?? pickLocale(request.headers.get('accept-language')), picked };
}

/** A path with the picked language carried on: `linkFor(viewer, '/p/x', { line: '0' })`. */
export function linkFor(
  viewer: Viewer,
  path: string,
  query: Readonly<Record<string, string>> = {},
  anchor = '',
): string {
  const search = new URLSearchParams(query);
  if (viewer.picked !== null && !search.has('lang')) search.set('lang', viewer.picked);
  const text = search.toString();
  return path + (text === '' ? '' : `?${text}`) + anchor;
}

/** True where the asker wants data instead of a page. */
export function wantsJson(request: Request): boolean {
  const accept = request.headers.get('accept') ?? '';
  return accept.includes('application/json') && !accept.includes('text/html');
}
