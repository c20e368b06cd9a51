// Sentences of the soundness report in German.

import type { bookEn } from '../en/book.ts';

export const bookDe: Readonly<Record<keyof typeof bookEn, string>> = {};
