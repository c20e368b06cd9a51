// Sentences of the desk's page of marking schemes in German.

import type { deskSchemesEn } from '../en/desk-schemes.ts';

export const deskSchemesDe: Readonly<Record<keyof typeof deskSchemesEn, string>> = {
  'nav-schemes': 'Wertung',
  'schemes-intro':
    'Geänderte Zahlen gelten für Aufgaben, die danach gestellt werden. Eine Aufgabe behält die Fassung, die ihr Publikum gesehen hat.',
  'scheme-head-full-line': 'Ganze Variante',
  'scheme-head-key-move': 'Schlüsselzug',
  'scheme-version': 'Fassung {version, number}',
  'scheme-solved': 'Gelöst',
  'scheme-slower': 'Setzt matt, aber später',
  'scheme-base': 'Ein guter erster Zug, mindestens',
  'scheme-per-line': 'Für den richtigen Teil, bis zu',
  'scheme-example-full-line':
    'Zwei von drei Zügen richtig ergeben {part, number} von {solved, number}. Das ist milder als bei Lösewettbewerben, die für den ersten Zug allein nichts geben.',
  'scheme-example-key-move': 'Der erste Zug allein entscheidet, was auch folgt.',
  'scheme-save': 'Als neue Fassung sichern',
  'scheme-saved': 'Fassung {version, number} gilt für Aufgaben, die von jetzt an gestellt werden.',
  'scheme-wrong-not-a-number':
    '{field, select, solved {Gelöst} slower {Setzt matt, aber später} base {Ein guter erster Zug} other {Der Teil der Zugfolge}}: erwartet wird eine ganze Zahl von {least, number} bis {most, number}.',
  'scheme-wrong-slower-above-solved': 'Ein späteres Matt kann nicht mehr bringen als eine gelöste Aufgabe.',
  'scheme-wrong-part-above-solved':
    'Erster Zug und Teil der Zugfolge zusammen können nicht mehr bringen als eine gelöste Aufgabe.',
};
