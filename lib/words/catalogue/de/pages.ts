// Sentences of the pages in German.

import type { pagesEn } from '../en/pages.ts';

export const pagesDe: Readonly<Record<keyof typeof pagesEn, string>> = {};
