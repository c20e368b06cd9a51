// Sentences of the desk about corrections of a published puzzle, in German.

import type { deskAmendEn } from '../en/desk-amend.ts';

export const deskAmendDe: Readonly<Record<keyof typeof deskAmendEn, string>> = {
  'move-close': 'Den Einsendeschluss verlegen',
  'move-close-now': 'Verlegen',
  'move-close-hint':
    'Welche Antworten rechtzeitig sind, wird für alle neu entschieden. Kannte das Publikum den bisherigen Schluss, steht eine Berichtigung auf der Seite der Aufgabe.',
  'move-close-done': 'Der Einsendeschluss ist verlegt.',
  'new-close': 'Neuer Einsendeschluss',
  'correction-note': 'Ein Wort an das Publikum (kann leer bleiben)',
  'correction-note-needed': 'Ein Wort an das Publikum',
  'correction-note-hint': 'Es steht in der Berichtigung, sofort und für alle. Verrate die Lösung nicht.',
  'refused-note-empty': 'Das Publikum erfährt, was falsch war: schreib einen Satz für die Berichtigung.',
  'refused-note-too-long':
    'Der Text hat {length, number} Zeichen; höchstens {most, number} passen in die Berichtigung.',
  'log-amendment-asked': 'Berichtigung begonnen',
  'log-amendment-cancelled': 'Berichtigung verworfen',
  'log-amendment-verified': 'Berichtigung geprüft',
  'log-puzzle-amended': 'Berichtigung in Kraft gesetzt',
  'wrong-bounds':
    'Grenzen sind ganze Hundertstel eines Bauern von {least, number} bis {most, number}, und ein Zug fällt erst unter der Grenze durch, ab der er hält.',
  'refused-no-amendment':
    'Es ist keine Berichtigung in Arbeit; vielleicht hat jemand anders sie entschieden.',
  'refused-amendment-open':
    'An dieser Aufgabe wird schon eine Berichtigung vorbereitet. Setz sie erst in Kraft oder verwirf sie.',
  'refused-nothing-changed':
    'Nichts ist anders: Stellung, Forderung, Bedingungen und veröffentlichte Lösung sind, wie sie jetzt lauten.',
};
