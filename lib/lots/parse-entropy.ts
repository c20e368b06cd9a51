// How the numbers that chance gave in public become the key of a drawing (RFC 3797, section 4; rule S4).

import { ok, type Result, refuse } from '#lib/kit/result.ts';

/** Why a text holds no numbers to draw with: the source (from 1) and what stands there. */
export type EntropyReason =
  | { readonly code: 'no-numbers'; readonly source: number }
  | { readonly code: 'not-a-number'; readonly source: number; readonly found: string };

/**
 * The key: each source's numbers in ascending order, each followed by a full stop, each source by a slash.
 * In the text a slash parts sources; spaces, commas and full stops part numbers, so that the key itself gives
 * the same key: `9319 / 2 5 12 8 10` becomes `9319./2.5.8.10.12./`. Whole numbers only.
 */
export function parseEntropy(text: string): Result<string, EntropyReason> {
  const sources = text.trim().replace(/\/$/, '').split('/');
  let key = '';
  for (const [index, source] of sources.entries()) {
    const words = source.split(/[\s,;.]+/).filter((word) => word !== '');
    if (words.length === 0) return refuse({ code: 'no-numbers', source: index + 1 });
    const odd = words.find((word) => !/^\d{1,30}$/.test(word));
    if (odd !== undefined)
      return refuse({ code: 'not-a-number', source: index + 1, found: odd.slice(0, 40) });
    const numbers = words.map(BigInt).sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
    key += `${numbers.join('.')}./`;
  }
  return ok(key);
}
