import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';

// Fractions that people say; everything lies near one of them, or is "1 in so many".
const SAID: readonly (readonly [number, number])[] = [
  [1, 1],
  [9, 10],
  [4, 5],
  [3, 4],
  [2, 3],
  [3, 5],
  [1, 2],
  [2, 5],
  [1, 3],
  [1, 4],
  [1, 5],
  [1, 6],
  [1, 7],
  [1, 8],
  [1, 9],
];

/** A share in words: "1 in 3", "9 in 10"; below a tenth "1 in 25". `all` only where it is all. */
export function sayShare(count: number, of: number, locale: Locale): string {
  if (count >= of) return say(locale, 'pages.share-all');
  const share = count / of;
  if (share <= 0.105) return say(locale, 'pages.share', { part: 1, of: Math.round(of / count) });
  let best: readonly [number, number] = [1, 10];
  for (const said of SAID.slice(1)) {
    if (Math.abs(said[0] / said[1] - share) < Math.abs(best[0] / best[1] - share)) best = said;
  }
  return say(locale, 'pages.share', { part: best[0], of: best[1] });
}
