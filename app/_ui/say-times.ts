import { offsetMinutes } from '#lib/kit/zoned-time.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';

// English with the day before the month, as the shows of a continent write it.
const TAGS: Readonly<Record<Locale, string>> = { en: 'en-GB', de: 'de-DE' };

/** "Friday 27 November, 18:00 UTC+1": a moment in a zone, with the offset named. */
export function sayMoment(moment: Date, zone: string, locale: Locale): string {
  const day = new Intl.DateTimeFormat(TAGS[locale], {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    timeZone: zone,
  }).format(moment);
  const time = new Intl.DateTimeFormat(TAGS[locale], {
    hour: '2-digit',
    minute: '2-digit',
    timeZone: zone,
  }).format(moment);
  return `${day}, ${time} ${sayOffset(moment, zone)}`;
}

/** "27 November 2026". */
export function sayDay(moment: Date, zone: string, locale: Locale): string {
  return new Intl.DateTimeFormat(TAGS[locale], {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: zone,
  }).format(moment);
}

/** "UTC", "UTC+1", "UTC−3:30". */
export function sayOffset(moment: Date, zone: string): string {
  const minutes = offsetMinutes(moment, zone);
  if (minutes === 0) return 'UTC';
  const whole = Math.abs(minutes);
  const rest = whole % 60 === 0 ? '' : `:${String(whole % 60).padStart(2, '0')}`;
  return `UTC${minutes < 0 ? '−' : '+'}${Math.floor(whole / 60)}${rest}`;
}

/** What is left until a moment, in the largest fitting unit, cut and never rounded up: "2 days left". */
export function sayTimeLeft(from: Date, to: Date, locale: Locale): string {
  const minutes = Math.floor((to.getTime() - from.getTime()) / 60_000);
  if (minutes < 1) return say(locale, 'pages.left-seconds');
  if (minutes < 60) return say(locale, 'pages.left-minutes', { count: minutes });
  if (minutes < 48 * 60) return say(locale, 'pages.left-hours', { count: Math.floor(minutes / 60) });
  return say(locale, 'pages.left-days', { count: Math.floor(minutes / (24 * 60)) });
}
