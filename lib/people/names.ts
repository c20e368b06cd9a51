// Is this a name that can be shown and read out? Length, control and direction characters, and
// names that look like another's (design.md, Data). A name displays a person, it never identifies one.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { skeletonOf } from './inner/skeleton.ts';

/** Longest name, in graphemes: what a reader sees as one character counts once. */
export const NAME_GRAPHEMES = 40;

/** Most combining marks on one character; more than a few are made to spill over other lines. */
const MARKS_PER_GRAPHEME = 4;

/** Why a text is no name; `at` is the place in UTF-16 units where that helps. */
export type NameReason =
  | { readonly code: 'too-long'; readonly graphemes: number; readonly most: number }
  | { readonly code: 'control-character'; readonly at: number; readonly codePoint: string }
  | { readonly code: 'direction-character'; readonly at: number; readonly codePoint: string }
  | { readonly code: 'invisible-character'; readonly at: number; readonly codePoint: string }
  | { readonly code: 'stacked-marks'; readonly at: number };

const CONTROL = /[\p{Cc}\p{Zl}\p{Zp}\p{Cs}\p{Co}\p{Cn}]/u;
const DIRECTION = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/u;
// Joiners are needed in some scripts and in joined signs; between Latin letters they only hide a look-alike.
const INVISIBLE = /(?!\u200c|\u200d|[\ufe00-\ufe0f])\p{Default_Ignorable_Code_Point}/u;
const LONE_JOINER =
  /(?<!\p{L}|\p{M}|\p{Extended_Pictographic})(?:\u200c|\u200d)|(?:\u200c|\u200d)(?!\p{L}|\p{M}|\p{Extended_Pictographic})|(?<=\p{Script=Latin})(?:\u200c|\u200d)/u;
const MARKS = /\p{M}+/gu;

/**
 * Cleans a typed name: NFC, blanks joined and trimmed, null for none; or the reason that forbids it.
 * At most 40 graphemes; control, line-break, direction and invisible characters are refused, not
 * dropped, so that nobody appears under a name that they did not type. Linear in the text's length,
 * which the door has bounded.
 */
export function parseName(text: string): Result<string | null, NameReason> {
  const raw = text.normalize('NFC').replace(/^[\p{Zs}\t\r\n]+|[\p{Zs}\t\r\n]+$/gu, '');
  const forbidden =
    place(raw, CONTROL, 'control-character') ??
    place(raw, DIRECTION, 'direction-character') ??
    place(raw, INVISIBLE, 'invisible-character') ??
    place(raw, LONE_JOINER, 'invisible-character') ??
    stackedMarks(raw);
  if (forbidden !== null) return refuse(forbidden);
  const name = raw.replace(/\p{Zs}+/gu, ' ');
  const graphemes = countGraphemes(name);
  if (graphemes > NAME_GRAPHEMES) return refuse({ code: 'too-long', graphemes, most: NAME_GRAPHEMES });
  return ok(name === '' ? null : name);
}

/**
 * A name from a comment file, made presentable instead of refused, because its owner is not there to
 * mend it: forbidden characters become blanks, marks beyond four fall away, the 41st grapheme is cut
 * and an ellipsis put. Null where nothing is left.
 */
export function tameName(text: string): string | null {
  const visible = text
    .normalize('NFC')
    .slice(0, 4000)
    .replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Cs}\p{Co}\p{Cn}]/gu, ' ')
    .replace(new RegExp(DIRECTION, 'gu'), '')
    .replace(new RegExp(INVISIBLE, 'gu'), '')
    .replace(new RegExp(LONE_JOINER, 'gu'), '')
    .replace(MARKS, (marks) => marks.slice(0, MARKS_PER_GRAPHEME))
    .replace(/\p{Zs}+/gu, ' ')
    .trim();
  const graphemes = segment(visible);
  if (graphemes.length === 0) return null;
  if (graphemes.length <= NAME_GRAPHEMES) return visible;
  return `${graphemes.slice(0, NAME_GRAPHEMES - 1).join('')}…`;
}

/** The first of the other names that this one could be taken for, or null. Equal names look alike too. */
export function findLookAlike(name: string, others: Iterable<string>): string | null {
  const skeleton = skeletonOf(name);
  if (skeleton === '') return null;
  for (const other of others) if (skeletonOf(other) === skeleton) return other;
  return null;
}

/** What a name looks like: equal for names that a hurried eye takes for one. For look-ups and indexes. */
export function nameSkeleton(name: string): string {
  return skeletonOf(name);
}

function place<C extends 'control-character' | 'direction-character' | 'invisible-character'>(
  text: string,
  pattern: RegExp,
  code: C,
): { code: C; at: number; codePoint: string } | null {
  const at = text.search(pattern);
  if (at < 0) return null;
  const point = text.codePointAt(at) ?? 0;
  return { code, at, codePoint: `U+${point.toString(16).toUpperCase().padStart(4, '0')}` };
}

function stackedMarks(text: string): { code: 'stacked-marks'; at: number } | null {
  for (const found of text.matchAll(MARKS)) {
    if ([...found[0]].length > MARKS_PER_GRAPHEME) return { code: 'stacked-marks', at: found.index };
  }
  return null;
}

function segment(text: string): string[] {
  return Array.from(
    new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(text),
    (part) => part.segment,
  );
}

function countGraphemes(text: string): number {
  return segment(text.slice(0, 4000)).length;
}
