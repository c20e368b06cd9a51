// Sentences of the public pages in German.

import type { pagesEn } from '../en/pages.ts';

const MOVES_IN_WORDS =
  '{moves, plural, =1 {einem Zug} =2 {zwei Zügen} =3 {drei Zügen} =4 {vier Zügen} =5 {fünf Zügen} =6 {sechs Zügen} =7 {sieben Zügen} =8 {acht Zügen} other {{moves, number} Zügen}}';
const SIDE = '{side, select, white {Weiß} other {Schwarz}}';

export const pagesDe: Readonly<Record<keyof typeof pagesEn, string>> = {
  'own-name': 'Deutsch',
  skip: 'Zur Seite',
  'link-puzzles': 'Aufgaben',
  'link-standings': 'Stand',
  'link-rules': 'Wie gewertet wird',
  number: 'Nr. {number, number}',

  'task-mate': `${SIDE} zieht und setzt in ${MOVES_IN_WORDS} matt`,
  'task-win': `${SIDE} zieht und gewinnt`,
  'task-draw': `${SIDE} zieht und hält remis`,
  closes: 'Einsendeschluss',
  'closed-at': 'Geschlossen seit',
  'own-time': '({time} bei Ihnen)',
  'left-seconds': 'noch weniger als eine Minute',
  'left-minutes': 'noch {count, plural, one {# Minute} other {# Minuten}}',
  'left-hours': 'noch {count, plural, one {# Stunde} other {# Stunden}}',
  'left-days': 'noch {count, plural, one {# Tag} other {# Tage}}',
  'your-line': 'Ihre Zugfolge, in jeder Schreibweise und Sprache',
  'read-back': 'Lies es mir vor',
  'answer-hint':
    'Ohne Anmeldung. Tippen Sie die Steine an oder schreiben Sie: Th1, Rh1, „Turm nach h1“. Vor der Auflösung sieht niemand Antworten oder Wertungen.',
  'waits-for-reveal': 'Antworten werden nicht mehr angenommen. Die Lösung folgt mit der Auflösung.',
  'see-solution': 'Zur Lösung',
  void: 'Diese Aufgabe wurde aus der Wertung genommen. Es gibt keine Punkte, keine Serie reißt; danke fürs Lösen.',

  'front-title': 'Aufgaben',
  'front-open': 'Jetzt offen',
  'front-none-open': 'Im Augenblick ist keine Aufgabe offen.',
  'front-past': 'Früher',
  'front-empty': 'Die erste Aufgabe ist noch nicht gestellt.',
  'state-closed': 'geschlossen, wartet auf die Auflösung',
  'state-revealed': 'Lösung',
  'state-void': 'aus der Wertung',
  'front-answer': 'Diese beantworten',
  'no-name': 'ohne Namen',

  'standings-empty': 'Noch ist nichts aufgelöst; der Stand beginnt mit der ersten Auflösung.',
  'standings-count': '{count, plural, one {# Löser} other {# Löser}}',
  'standings-rank': 'Rang',
  'standings-shared': 'geteilt',
  'standings-name': 'Name',
  'standings-solved': 'Gelöst',
  'standings-points': 'Punkte',
  'standings-next': 'Weiter unten',
  'standings-others': 'Staffeln und Folgen',

  'check-title': 'Ist das Ihre Zugfolge?',
  'check-title-several': 'Welche Zugfolge meinen Sie?',
  'check-title-none': 'Kein Zug war zu lesen',
  'check-title-turned': 'Steht Ihr Brett verkehrt herum?',
  'check-none':
    'Nichts in Ihrem Text ist hier ein regelgemäßer Zug. Ändern Sie ihn, oder senden Sie ihn so: Ein Mensch sieht ihn sich an.',
  'check-chatter': 'In diesem Text steht kein Zug. Schreiben Sie, was Sie spielen würden.',
  'check-turned':
    'So geschrieben ist kein Zug regelgemäß. Von der anderen Seite gesehen wäre es die Zugfolge unten; über solche Texte entscheidet die Redaktion.',
  'check-impossible': '„{move}“ ist dort nicht spielbar; davor endet die Lesung.',
  'check-first-unread': 'Das Erste, was nach einem Zug aussieht, ist „{move}“.',
  'check-cut': 'Ihr Text wurde nach 4.000 Zeichen abgeschnitten.',
  'check-solver-only': 'Sie haben keine Antworten angegeben; das genügt. Die Lücken bleiben offen.',
  'check-several': 'Ihr Text passt auf mehr als eine Zugfolge. Sagen Sie, welche, oder lassen Sie es offen.',
  'check-leave-open': 'Offen lassen',
  'check-branches': 'Auch gelesen:',
  'check-choices': 'Stattdessen angeboten:',
  'check-tries': 'Von Ihnen verworfen:',
  'check-text': 'Ihr Text',
  'check-elsewhere': 'Als Antwort auf „{title}“ gelesen wäre es eine ganze Zugfolge.',
  'check-elsewhere-link': 'Zu jener Aufgabe',
  'check-change': 'Text ändern',
  name: 'Ihr Name, wenn er vorgelesen werden darf',
  'name-hint': 'Darf leer bleiben. Bis zu 40 Zeichen; steht nach der Auflösung in der Liste der Löser.',
  send: 'Absenden',
  'check-nothing-stored': 'Noch ist nichts gespeichert.',
  gap: 'Antwort nicht angegeben',
  'diagram-after': 'Die Stellung nach {move}',
  'diagram-start': 'Die Stellung der Aufgabe',

  'refused-closed':
    'Einsendeschluss war {moment}. Ihr Text bleibt hier stehen, kann aber nicht mehr gesendet werden.',
  'refused-empty': 'Schreiben Sie zuerst eine Zugfolge.',
  'refused-name-too-long': 'Der Name ist zu lang: höchstens {most, number} Zeichen.',
  'refused-name': 'Der Name enthält Zeichen, die niemand vorlesen kann: {found}. Bitte weglassen.',
  'refused-key-used':
    'Dieses Formular wurde schon mit einem anderen Text gesendet. Ihr Beleg enthält den ersten; dort können Sie ihn ändern.',
  'refused-meant': 'Die gewählte Zugfolge gehört nicht mehr zu diesem Text. Bitte noch einmal wählen.',
  'refused-too-many':
    'Zu viele Antworten von Ihrer Adresse. Versuchen Sie es in einer Minute wieder; Ihr Text bleibt hier stehen.',

  'trouble-database-away-title': 'Einen Augenblick, bitte',
  'trouble-database-away':
    'Der Aufgabentisch ist gerade nicht zu erreichen. Nichts ging verloren; versuchen Sie es in ein paar Sekunden wieder.',
  'trouble-our-mistake-title': 'Unser Fehler',
  'trouble-our-mistake':
    'Bei uns ging etwas schief; es ist vermerkt. Versuchen Sie es noch einmal; wenn es bleibt, sagen Sie es der Redaktion.',
  'trouble-not-found-title': 'Hier steht nichts',
  'trouble-not-found': 'Unter dieser Adresse gibt es keine Seite. Die Aufgaben stehen auf der ersten Seite.',
  'trouble-foreign-page-title': 'Nicht von dieser Seite',
  'trouble-foreign-page':
    'Das Formular kam von einer fremden Adresse und wurde nicht angenommen. Öffnen Sie die Aufgabe und senden Sie von dort.',
  'trouble-too-large-title': 'Zu lang',
  'trouble-too-large':
    'Das Gesendete ist größer als 64 Kilobyte. Eine Antwort darf bis zu 4.000 Zeichen haben.',
  'trouble-wrong-type-title': 'Kein Formular',
  'trouble-wrong-type':
    'Erwartet wurde ein Formular (application/x-www-form-urlencoded) oder JSON (application/json), nicht komprimiert.',
  'trouble-not-json-title': 'Kein JSON',
  'trouble-not-json': 'Erwartet wurde ein JSON-Objekt mit dem Feld "text".',
  'trouble-too-many-title': 'Zu viel auf einmal',
  'trouble-too-many': 'Von Ihrer Adresse kamen zu viele Anfragen. Versuchen Sie es in einer Minute wieder.',
  'trouble-kept': 'Ihr Text',
  'send-again': 'Noch einmal senden',
};
