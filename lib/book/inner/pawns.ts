// How is a value printed?

import type { Locale } from '#lib/words/locale.ts';

/** Centipawns as pawns with a sign: 310 is "+3.1". */
export function pawns(locale: Locale, centipawns: number): string {
  return new Intl.NumberFormat(locale, {
    signDisplay: 'exceptZero',
    minimumFractionDigits: 1,
    maximumFractionDigits: 2,
  }).format(centipawns / 100);
}
