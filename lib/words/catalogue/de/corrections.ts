// Sentences of correction notices in German, as viewers read them.

import type { correctionsEn } from '../en/corrections.ts';

export const correctionsDe: Readonly<Record<keyof typeof correctionsEn, string>> = {
  corrections: '{count, plural, one {Berichtigung} other {Berichtigungen}}',
  'corrected-position': 'Die Stellung wurde berichtigt.',
  'corrected-task': 'Die Forderung wurde berichtigt.',
  'corrected-conditions': 'Die Bedingungen der Aufgabe wurden berichtigt.',
  'corrected-keys': 'Die veröffentlichte Lösung wurde berichtigt.',
  'corrected-nothing-shown':
    'Die Aufgabe wurde noch einmal geprüft. Stellung und Forderung bleiben, wie sie sind.',
  'corrected-marking':
    'Jede Antwort wird an dem gemessen, was ihr Absender sah; wo das nicht zu sagen ist, an dem für ihn Günstigeren.',
  'close-was': 'Der Einsendeschluss wurde verlegt: bisher',
  'close-is': 'jetzt',
  'correction-void': 'Die Aufgabe wurde aus der Wertung genommen.',
  'check-corrected':
    'Die Aufgabe wurde berichtigt, während Sie geschrieben haben. Ihre Zugfolge ist in der Stellung gelesen, die Sie gesehen haben, und wird an ihr gemessen, wenn Sie sie so senden.',
  'check-corrected-link': 'Erst die berichtigte Aufgabe ansehen',
  'receipt-former':
    'Die Aufgabe wurde berichtigt. Hier steht die Stellung, an der Ihre Antwort gemessen wird.',
  'receipt-former-link': 'Die Aufgabe, wie sie jetzt lautet',
};
