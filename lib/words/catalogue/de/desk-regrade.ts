// Sentences about marking everybody again, and about other ways that viewers found, for the desk in German.

import type { deskRegradeEn } from '../en/desk-regrade.ts';

export const deskRegradeDe: Readonly<Record<keyof typeof deskRegradeEn, string>> = {
  'log-regrade-asked': 'Antworten neu bewerten lassen',
  'log-regrade-agreed': 'Einer Neubewertung zugestimmt',
  'log-regrade-cancelled': 'Eine Neubewertung verworfen',
  'log-regrade-applied': 'Wertungen durch Neubewertung geändert',
  'regrade-title': 'Alle neu bewerten',
  'regrade-intro':
    'Jede Antwort wird nach heutigem Wissen noch einmal bewertet. Du siehst zuerst, was sich ändern würde; vor deinem Ja ändert sich nichts.',
  'regrade-intro-hidden':
    'Noch ist nichts öffentlich, deshalb werden die Wertungen einfach erneuert. Nach der Auflösung sähst du zuerst, was sich ändert.',
  'regrade-intro-none': 'Noch ist keine Antwort bewertet; es gibt nichts neu zu bewerten.',
  'regrade-not-published': 'Vor der Veröffentlichung kann niemand geantwortet haben.',
  'regrade-void': 'Eine ungültige Aufgabe bringt keine Punkte; ihre Wertungen werden nicht mehr geändert.',
  'regrade-owner': 'Darüber entscheidet, wem die Sendung gehört.',
  'regrade-why': 'Warum?',
  'regrade-why-hint': 'Bleibt bei der Neubewertung stehen, für dich und deine Helfer.',
  'regrade-ask': 'Alle neu bewerten',
  'regrade-asked-now': '{answers, plural, one {Eine Antwort wird} other {# Antworten werden}} neu bewertet.',
  'regrade-asked-first': 'Wird ausgearbeitet. Nichts ändert sich, bevor du es gesehen hast.',
  'regrade-because': 'Grund: {reason}',
  'regrade-by-program':
    'Diese Antworten sollten vor der Auflösung neu bewertet werden und kamen erst danach an die Reihe.',
  'regrade-marking': 'Wird neu bewertet, um zu sehen, was sich ändern würde.',
  'regrade-book': 'Das Lösungsbuch wird nach Zügen gefragt, die es noch nicht kennt.',
  'regrade-writing': 'Wird geschrieben. Alle Wertungen ändern sich im selben Augenblick.',
  'regrade-parts': '{done} von {total} Antworten.',
  'regrade-unknown': 'Wie viele Antworten es sind, ist noch nicht gezählt.',
  'regrade-writing-hint': 'Wer liest, sieht die alten Wertungen oder die neuen, nie von beiden etwas.',
  'regrade-progress-label': 'Neu bewertete Antworten',
  'regrade-what': 'Was sich ändern würde',
  'regrade-nothing':
    'Kein Ergebnis und keine Punkte würden sich ändern. Das Schreiben erneuert nur Erklärungen und die Fassungen, die an den Wertungen stehen.',
  'regrade-renewed':
    'Seit deinem Ja hat sich etwas geändert: Es wurde nichts geschrieben. Das würde sich jetzt ändern.',
  'regrade-rise':
    '{marks, plural, one {Eine Wertung würde} other {# Wertungen würden}} steigen, zusammen um {points, plural, one {einen Punkt} other {# Punkte}}.',
  'regrade-fall':
    '{marks, plural, one {Eine Wertung würde} other {# Wertungen würden}} fallen, zusammen um {points, plural, one {einen Punkt} other {# Punkte}}.',
  'regrade-same':
    '{same, plural, =0 {Jede Wertung ändert sich.} one {Eine Wertung bleibt, wie sie ist.} other {# Wertungen bleiben, wie sie sind.}}',
  'regrade-unjudged':
    '{count, plural, one {Eine Antwort ließ} other {# Antworten ließen}} sich nicht beurteilen; die Ausgabe des Hintergrundprogramms sagt, warum. Die Wertungen bleiben.',
  'regrade-asked': 'Brauchen dein Wort, eine nach der anderen',
  'regrade-asked-hint':
    'Hake an, was gelten soll. Was ohne Haken bleibt, behält seine Wertung; die nächste Neubewertung schlägt es wieder vor.',
  'regrade-asked-more':
    '{count, plural, one {Eine weitere ist} other {# weitere sind}} nicht aufgeführt; sie behalten ihre Wertung bis zur nächsten Neubewertung.',
  'regrade-others': 'Ändern sich mit dem Ganzen',
  'regrade-others-more':
    '{count, plural, one {Eine weitere ist} other {# weitere sind}} nicht aufgeführt und gehen mit.',
  'regrade-overruled': 'Stehen unter deinem Wort',
  'regrade-overruled-hint':
    'Hier hast du anders entschieden. Es bleibt dabei; was das Programm jetzt findet, wird daneben aufgehoben.',
  'regrade-head-yes': 'Ja',
  'regrade-head-who': 'Wer',
  'regrade-head-change': 'Von und zu',
  'regrade-head-points': 'Punkte',
  'regrade-yes-to': '{name}: aus {from} wird {to}, {points} Punkte',
  'regrade-becomes': 'wird',
  'regrade-share': '{label}, {p, number} von {r, number}',
  'regrade-word-would-fall': 'fällt',
  'regrade-word-would-count': 'würde statt einer besseren Antwort zählen',
  'regrade-word-read-out': 'der Name wurde verlesen',
  'regrade-apply': 'So schreiben',
  'regrade-apply-hint': 'Es gelten die Anstiege und was du angehakt hast.',
  'regrade-cancel': 'Verwerfen',
  'regrade-agreed-done': 'Gesagt. Die Wertungen ändern sich gleich, alle auf einmal.',
  'regrade-dropped': 'Verworfen. Jede Wertung bleibt, wie sie war.',
  'regrade-earlier': 'Frühere',
  'regrade-applied':
    '{marks, plural, =0 {keine Wertung geschrieben} one {eine Wertung geschrieben} other {# Wertungen geschrieben}}',
  'regrade-cancelled': 'verworfen',
  'regrade-refused-reason-empty': 'Sag, warum; ein Wort genügt.',
  'regrade-refused-unknown-regrade': 'Diese Neubewertung gibt es nicht.',
  'regrade-refused-not-previewed': 'Inzwischen wurde sie entschieden oder neu begonnen. So steht es jetzt.',
  'regrade-refused-preview-changed':
    'Was sich ändern würde, ist nicht mehr das, was du gesehen hast. Sieh es noch einmal an.',
  'regrade-refused-not-in-preview': 'Antwort {answer, number} gehört nicht zu denen, die dein Wort brauchen.',
  'regrade-waits':
    'Eine Neubewertung wartet auf dein Wort: Was nach der Auflösung entschieden wurde, ändert vorher nichts.',
  'regrade-in-list': 'eine Neubewertung wartet auf dich',
  'regrade-runs': 'Eine Neubewertung wird ausgearbeitet.',
  'regrade-look': 'Ansehen, was sich ändern würde',
  'regrade-link': 'Alle neu bewerten',
  'ways-title': 'Ein anderer Weg wurde gefunden',
  'ways-other':
    '{count, plural, one {Ein Zuschauer fand} other {# Zuschauer fanden}} einen anderen Weg: {move} {task, select, mate {setzt ebenso rechtzeitig matt} draw {hält ebenfalls remis} other {gewinnt ebenfalls}}.',
  'ways-shorter':
    '{count, plural, one {Ein Zuschauer fand} other {# Zuschauer fanden}} einen kürzeren Weg: {move} setzt in {moves, number} matt.',
  'ways-ruled': 'Du hast entschieden, dass der Zug hält.',
  'ways-who': 'Gefunden von {names}{more, plural, =0 {} other { und # weiteren}}.',
  'ways-right': 'Er gilt als richtig bei allen, die ihn angaben.',
  'ways-offer':
    'Bei der Veröffentlichung kannte das Buch diesen Weg nicht. Alle neu zu bewerten stellt sicher, dass für alle gilt, was jetzt bekannt ist.',
  'ways-done': 'Seither wurden alle neu bewertet.',
};
