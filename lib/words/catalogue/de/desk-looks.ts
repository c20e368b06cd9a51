// Sentences about second looks, for the desk, in German.

import type { deskLooksEn } from '../en/desk-looks.ts';

export const deskLooksDe: Readonly<Record<keyof typeof deskLooksEn, string>> = {
  'doubtful-label-look': 'Zweiter Blick: {subject}',
  'doubtful-title-look': 'Zweiter Blick',
  'doubtful-about-look':
    'Jemand bittet, die Wertung noch einmal anzusehen. Dein Wort steht dann auf dem Beleg.',
  'look-no-words': 'Ohne Worte.',
  'look-says': 'Was dazu gesagt wird',
  'look-sent': 'Was geschickt wurde',
  'look-mark': 'Die Wertung, die gilt',
  'look-stands-key': 'Die Wertung bleibt',
  'look-reply': 'Antwort',
  'look-reply-hint':
    'Bis zu 500 Zeichen; sie wird gelesen. Bleibt sie leer, steht dort ein fester Satz. Escape führt zurück zu den Tasten.',
  'look-settled': 'Entschieden. Es ist jetzt zu lesen.',
  'look-pick':
    'Die Wertung hat sich geändert, seit diese Seite offen ist. Sieh sie noch einmal an und drück dann eine der Tasten.',
  'look-why': 'Nach einem zweiten Blick',
  'settle-unknown-look': 'Das hat inzwischen jemand entschieden, oder die Antwort wurde zurückgezogen.',
  'settle-too-long': 'Die Antwort hat {length, number} Zeichen; höchstens {most, number} gehen.',
  'looks-waiting': '{count, plural, one {Ein zweiter Blick wartet} other {# zweite Blicke warten}} auf dich.',
  'look-on-mark': 'Zweiter Blick',
  'look-waits': 'Er wartet auf dich.',
  'look-to-list': 'Entscheiden',
  'look-done-stands': 'Entschieden von {who}, {at}: Die Wertung bleibt.',
  'look-done-changed': 'Entschieden von {who}, {at}: Die Wertung wurde geändert.',
  'look-your-reply': 'Die Antwort darauf',
};
