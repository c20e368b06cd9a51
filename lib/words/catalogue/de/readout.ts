// Sentences of the readout in German.

import type { readoutEn } from '../en/readout.ts';

export const readoutDe: Readonly<Record<keyof typeof readoutEn, string>> = {};
