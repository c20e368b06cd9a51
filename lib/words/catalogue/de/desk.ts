// Sentences of the desk in German.

import type { deskEn } from '../en/desk.ts';

export const deskDe: Readonly<Record<keyof typeof deskEn, string>> = {};
