// Outcomes, flags and explanations of marks in German.

import type { markingEn } from '../en/marking.ts';

export const markingDe: Readonly<Record<keyof typeof markingEn, string>> = {
  'outcome-solved': 'Gelöst',
  'outcome-slower': 'Matt, aber später',
  'outcome-unfinished': 'Bis hierher richtig',
  'outcome-slipped': 'Fehler im {move, number}. Zug',
  'outcome-wrong': 'Falscher erster Zug',
  'outcome-impossible': 'Im {move, number}. Zug nicht regelgemäß',
  'outcome-ambiguous': 'Zwei Lesarten',
  'outcome-unclear': 'Das entscheidet die Redaktion',
  'outcome-unreadable': 'Nicht lesbar',
  'outcome-chatter': 'Keine Antwort',
};
