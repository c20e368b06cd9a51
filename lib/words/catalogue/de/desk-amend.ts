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
  'refused-close-unchanged': 'Sie schließt schon zu dieser Zeit.',
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
  amend: 'Die Aufgabe berichtigen',
  'amend-open-link': 'Eine Berichtigung ist in Arbeit',
  'amend-intro':
    'Eine berichtigte Aufgabe behält ihre Adresse. Was du hier schreibst, wird zuerst geprüft; niemand sieht etwas davon, bis du es in Kraft setzt. Dann steht eine Berichtigung auf den öffentlichen Seiten, und jede Antwort wird an dem gemessen, was ihr Absender sah; wo das nicht zu sagen ist, an dem für ihn Günstigeren.',
  'amend-revealed':
    'Die Lösung ist schon öffentlich: Wertungen ändern sich erst, wenn du dir angesehen hast, was sich ändern würde.',
  'amend-cancelled-hint': 'Das Formular ist mit deiner letzten, verworfenen Berichtigung ausgefüllt.',
  'amend-ask': 'Berichtigung prüfen lassen',
  'amend-bounds':
    'Wann ein Gewinn oder ein Remis hält und wann es verspielt ist, in Hundertsteln eines Bauern',
  'amend-win-bound': 'Gewinn hält ab',
  'amend-slip-bound': 'Gewinn verspielt bei',
  'amend-draw-bound': 'Remis hält ab',
  'amend-draw-slip-bound': 'Remis verspielt bei',
  'amend-changes': 'Was sich ändern würde',
  'amend-now': 'Bisher',
  'amend-then': 'Berichtigt',
  'amend-position': 'Stellung',
  'amend-task': 'Forderung',
  'amend-conditions': 'Bedingungen',
  'amend-keys': 'Lösung und Grenzen',
  'amend-title': 'Titel',
  'amend-note': 'In der Berichtigung wird stehen',
  'amend-no-lines': 'keine veröffentlichte Zugfolge',
  'amend-bounds-are': 'Gewinn {win, number} und {slip, number}, Remis {draw, number} und {drawSlip, number}',
  'amend-condition-mateWritten': 'der Mattzug muss dastehen',
  'amend-condition-anyDefence': 'jede Verteidigung darf beantwortet werden',
  'amend-condition-isStrict': 'streng',
  'amend-condition-solverMoves':
    '{moves, plural, one {# guter Zug beendet} other {# gute Züge beenden}} eine Antwort',
  'amend-condition-none': 'keine',
  'amend-answers':
    '{count, plural, =0 {Es ist noch keine Antwort da.} one {Eine Antwort ist da; sie wird neu gewertet.} other {# Antworten sind da; alle werden neu gewertet.}}',
  'amend-put': 'Berichtigung in Kraft setzen',
  'amend-put-hint':
    'Von diesem Moment an zeigen die öffentlichen Seiten die berichtigte Aufgabe und den Hinweis. Das lässt sich nicht zurücknehmen, nur noch einmal berichtigen.',
  'amend-reason': 'Warum trotzdem in Kraft setzen?',
  'amend-cancel': 'Berichtigung verwerfen',
  'amend-cancel-hint': 'Die Aufgabe bleibt, wie sie ist. Was du geschrieben hast, steht hier wieder bereit.',
  'amend-failed':
    'Die Prüfung brach ab: {failure}. Sie wird von selbst noch einmal versucht; du kannst die Berichtigung auch verwerfen.',
  'amend-claim-false':
    'Die berichtigte Behauptung ist falsch und kann nicht in Kraft treten. Der Bericht sagt, was stimmt: verwirf sie und stell diese Forderung.',
};
