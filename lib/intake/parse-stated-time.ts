// When was a comment written, by its source's own words? Rule P2: a coarse time ("2 days ago") is an
// interval counted back from the export's own time.

import { instantOf, parseWallTime } from '#lib/kit/zoned-time.ts';
import type { StatedTime } from './comment-record.ts';

/** What a time is read against. */
export interface TimeFrame {
  /** When the source was read off; coarse times count back from it. */
  readonly exportedAt: Date;
  /** Zone of times that name none; IANA name. */
  readonly zone: string;
}

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

// Shortest and longest length of a unit: months and years differ, and the interval must hold both.
const UNITS: readonly (readonly [RegExp, number, number])[] = [
  [/^(?:s|sec|secs|second|seconds|sek|sekunden?)$/, 1000, 1000],
  [/^(?:m|min|mins|minute|minutes|minuten)$/, MINUTE, MINUTE],
  [/^(?:h|hr|hrs|hour|hours|std|stunden?)$/, HOUR, HOUR],
  [/^(?:d|day|days|tag|tagen?)$/, DAY, DAY],
  [/^(?:w|wk|wks|week|weeks|wochen?)$/, 7 * DAY, 7 * DAY],
  [/^(?:mo|mos|month|months|monat|monate|monaten)$/, 28 * DAY, 31 * DAY],
  [/^(?:y|yr|yrs|year|years|jahr|jahre|jahren)$/, 365 * DAY, 366 * DAY],
];

const ONE = /^(?:a|an|one|eine[mrn]?|einem)$/;
const EDITED = /\s*\((?:edited|bearbeitet|modifié|editado|изменено|ред\.)\)\s*$/iu;

/** Whether the words say that the comment was edited, as in "2 days ago (edited)". */
export function saysEdited(text: string): boolean {
  return EDITED.test(text);
}

/**
 * The interval that a source's words for a time stand for, or null where they are no time. Understood:
 * ISO 8601 with or without offset (else the frame's zone; an hour that the zone repeats gives both,
 * one that it skips the moment after), dates alone as a whole day, seconds or milliseconds since 1970,
 * and "N units ago" in English and German. "2 days ago" means that two whole days have passed and not
 * three. That sources round down is common practice, no source.
 */
export function parseStatedTime(text: string, frame: TimeFrame): StatedTime | null {
  const words = text.slice(0, 120).replace(EDITED, '').trim();
  if (words === '') return null;
  return parseExact(words) ?? parseLocal(words, frame.zone) ?? parseCoarse(words, frame.exportedAt);
}

function parseExact(words: string): StatedTime | null {
  if (/^\d{10}$/.test(words)) return moment(Number(words) * 1000);
  if (/^\d{13}$/.test(words)) return moment(Number(words));
  const found =
    /^(\d{4}-\d{2}-\d{2}[T ]\d{2}:\d{2}(?::\d{2}(?:\.\d{1,9})?)?)\s*(Z|UTC|[+-]\d{2}:?\d{2})$/i.exec(words);
  const [, wallText, zoneText] = found ?? [];
  if (wallText === undefined || zoneText === undefined || parseWallTime(wallText) === null) return null;
  const offset = /^[+-]/.test(zoneText) ? zoneText.replace(/^([+-]\d{2}):?(\d{2})$/, '$1:$2') : 'Z';
  return moment(Date.parse(wallText.replace(' ', 'T') + offset));
}

function parseLocal(words: string, zone: string): StatedTime | null {
  const wall = parseWallTime(words);
  if (wall !== null) {
    const found = instantOf(wall, zone);
    if (found.kind === 'one') return { from: found.at, to: found.at };
    if (found.kind === 'twice') return { from: found.at, to: found.second };
    return { from: found.after, to: found.after };
  }
  if (!/^\d{4}-\d{2}-\d{2}$/.test(words)) return null;
  const day = parseWallTime(`${words} 00:00`);
  if (day === null) return null;
  const found = instantOf(day, zone);
  const start = found.kind === 'skipped' ? found.after : found.at;
  return { from: start, to: new Date(start.getTime() + DAY - 1) };
}

function parseCoarse(words: string, exportedAt: Date): StatedTime | null {
  const plain = words.toLowerCase();
  if (/^(?:just now|now|gerade eben|eben)$/.test(plain)) return back(exportedAt, MINUTE, 0);
  if (/^(?:yesterday|gestern)$/.test(plain)) return back(exportedAt, 2 * DAY, 0);
  const found = /^(?:vor\s+)?(?:(\d{1,4})|([a-z]+))\s*([a-z]+)\.?(?:\s+ago)?$/.exec(plain);
  if (found === null || !(plain.startsWith('vor ') || plain.endsWith(' ago'))) return null;
  const [, digits, word, unitWord] = found;
  const count = digits !== undefined ? Number(digits) : ONE.test(word ?? '') ? 1 : null;
  const unit = UNITS.find(([pattern]) => pattern.test(unitWord ?? ''));
  if (count === null || unit === undefined) return null;
  const [, shortest, longest] = unit;
  return back(exportedAt, (count + 1) * longest, count * shortest);
}

function back(exportedAt: Date, longestAgo: number, shortestAgo: number): StatedTime {
  return {
    from: new Date(exportedAt.getTime() - longestAgo),
    to: new Date(exportedAt.getTime() - shortestAgo),
  };
}

function moment(at: number): StatedTime | null {
  if (!Number.isFinite(at)) return null;
  return { from: new Date(at), to: new Date(at) };
}
