// In which language do we answer? The languages that the catalogue is complete in.

/** A language of the catalogue. A new one is one folder under catalogue/ and one entry here. */
export type Locale = 'en' | 'de';

/** Every language there is, the default first. */
export const LOCALES: readonly Locale[] = ['en', 'de'];

/** True where a text names a language of the catalogue. */
export function isLocale(text: string): text is Locale {
  return text === 'en' || text === 'de';
}

/**
 * The language of the catalogue that an Accept-Language header prefers; English where it names none.
 * Bounded: of a header longer than 200 characters only the beginning is read. `q=0` turns a language down.
 * Source: RFC 9110, section 12.5.4.
 */
export function pickLocale(acceptLanguage: string | null | undefined): Locale {
  let best: Locale = 'en';
  let bestWeight = 0;
  for (const part of (acceptLanguage ?? '').slice(0, 200).split(',')) {
    const [tag = '', ...settings] = part.split(';');
    const language = tag.trim().toLowerCase().split('-')[0] ?? '';
    if (!isLocale(language)) continue;
    const weight = weightOf(settings);
    if (weight > bestWeight) {
      best = language;
      bestWeight = weight;
    }
  }
  return best;
}

function weightOf(settings: readonly string[]): number {
  for (const setting of settings) {
    const [name, value] = setting.split('=');
    if (name?.trim() === 'q') return Number(value) || 0;
  }
  return 1;
}
