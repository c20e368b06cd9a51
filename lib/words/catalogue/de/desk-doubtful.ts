// Sentences of the list of doubtful answers in German.

import type { deskDoubtfulEn } from '../en/desk-doubtful.ts';

export const deskDoubtfulDe: Readonly<Record<keyof typeof deskDoubtfulEn, string>> = {
  'doubtful-none': 'Nichts ist zweifelhaft',
  'doubtful-none-hint': 'Hier stehen Antworten, die einen Menschen brauchen, die größte Gruppe zuerst.',
  'doubtful-being-marked': 'Sie werden neu gewertet. Lade die Seite gleich noch einmal.',
  'doubtful-waiting': 'Warten noch',
  'doubtful-people': 'Personen',
  'doubtful-reading': 'Lesart',
  'doubtful-outcome': 'Ergebnis',
  'doubtful-points': 'Punkte',
  'doubtful-open': 'wie der Rest gewertet wird',
  'doubtful-from': '{name}, {channel}, {at}',
  'doubtful-correct': 'lies es als',
  'doubtful-correct-submit': 'So nehmen',
  'doubtful-aside': 'beiseitelegen: nicht lesbar',
  'doubtful-undo': 'Zurücknehmen',
  'doubtful-settled': 'Entschieden. Die Antworten werden neu gewertet.',
  'doubtful-title-verdict': 'Führt {subject} zum Ziel?',
  'doubtful-title-unclear': 'Was zählt das?',
  'doubtful-title-reading': 'Welche Variante ist gemeint?',
  'doubtful-title-turned': 'Brett verdreht?',
  'doubtful-title-token': 'Was heißt „{subject}“?',
  'doubtful-title-text': 'Nicht lesbar',
  'doubtful-title-cut': 'Von der Quelle abgeschnitten',
  'doubtful-about-verdict':
    '{count, plural, one {Eine Antwort geht} other {# Antworten gehen}} hindurch, und der Rechner konnte es nicht entscheiden. Dein Wort gilt für alle.',
  'doubtful-about-unclear':
    '{count, plural, one {Eine Antwort} other {# Antworten}} mit diesem Text ließen sich nicht entscheiden.',
  'doubtful-about-reading':
    '{count, plural, one {Eine Person hat} other {# Personen haben}} das geschrieben. Je nach Lesart zählt es verschieden.',
  'doubtful-about-turned':
    '{count, plural, one {Eine Person hat} other {# Personen haben}} Züge geschrieben, die nur von der anderen Seite gesehen möglich sind. Ein Wort entscheidet alle.',
  'doubtful-about-token':
    '{count, plural, one {Eine Antwort bleibt} other {# Antworten bleiben}} an diesen Zeichen hängen.',
  'doubtful-about-text':
    '{count, plural, one {Eine Antwort sieht} other {# Antworten sehen}} wie eine Lösung aus, aber kein Zug war zu lesen.',
  'doubtful-about-cut':
    '{count, plural, one {Ein Text endet} other {# Texte enden}}, wo die Quelle abschneidet, bevor die Variante fertig war.',
  'doubtful-label-verdict': 'Führt {subject} zum Ziel?',
  'doubtful-label-unclear': 'Nicht zu entscheiden',
  'doubtful-label-reading': 'Zwei Lesarten',
  'doubtful-label-turned': 'Brett verdreht?',
  'doubtful-label-token': 'Nicht lesbar: „{subject}“',
  'doubtful-label-text': 'Nicht lesbar',
  'doubtful-label-cut': 'Von der Quelle abgeschnitten',
  'candidate-reading': 'als',
  'candidate-turned': 'gedreht:',
  'candidate-holds': '{subject} führt zum Ziel',
  'candidate-slips': '{subject} führt nicht zum Ziel',
  'candidate-outcome': 'werten als',
  'candidate-as-written': 'wie geschrieben',
  'doubtful-title-parked': 'Ließ sich nicht werten',
  'doubtful-about-parked':
    '{count, plural, one {Diese Antwort} other {Diese # Antworten}} zu werten ist dreimal misslungen und wurde aufgegeben. Nichts ist verloren. Versuch es noch einmal, wenn die Ursache behoben ist, oder sag, was sie zählt.',
  'doubtful-label-parked': 'Ließ sich nicht werten',
  'candidate-again': 'noch einmal versuchen, mit allen anderen, die sich nicht werten ließen',
  'channel-page': 'auf der Seite getippt',
  'channel-board': 'auf dem Brett',
  'channel-api': 'per Programm',
  'channel-comment': 'in einem Kommentar',
  'keys-on': 'Eine Taste entscheidet',
  'keys-hint': '(solange die Liste den Fokus hat)',
  'keys-list': 'Wege, es zu entscheiden',
  'settle-why': 'Aus der Liste entschieden, bei Antwort {answer}',
  'settle-group-empty': 'Das hat inzwischen jemand entschieden.',
  'settle-not-read': 'In dem, was du getippt hast, war keine Variante zu lesen.',
  'settle-nothing-to-undo': 'Es gibt nichts zurückzunehmen.',
  'settle-unknown-puzzle': 'In deiner Sendung gibt es diese Aufgabe nicht.',
  'settle-unknown-answer': 'In deiner Sendung gibt es diese Antwort nicht.',
  'settle-no-move-to-rule-on':
    'Hier gibt es keinen einzelnen Zug zu entscheiden. Sag stattdessen, was die Antwort zählt.',
  'settle-withdrawn': 'Die Antwort wurde inzwischen zurückgezogen.',
  'settle-not-marked-yet': 'Die Antwort ist noch nicht gewertet.',
  'settle-why-empty': 'Sag in ein paar Worten, warum.',
  'settle-points': 'Punkte gehen von {least, number} bis {most, number}.',
};
