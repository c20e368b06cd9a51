// Sentences of the public pages in German.

import type { pagesEn } from '../en/pages.ts';

import { correctionsDe } from './corrections.ts';

const MOVES_IN_WORDS =
  '{moves, plural, =1 {einem Zug} =2 {zwei Zügen} =3 {drei Zügen} =4 {vier Zügen} =5 {fünf Zügen} =6 {sechs Zügen} =7 {sieben Zügen} =8 {acht Zügen} other {{moves, number} Zügen}}';
const SIDE = '{side, select, white {Weiß} other {Schwarz}}';

export const pagesDe: Readonly<Record<keyof typeof pagesEn, string>> = {
  'own-name': 'Deutsch',
  skip: 'Zur Seite',
  'link-puzzles': 'Aufgaben',
  'link-standings': 'Rangliste',
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
  'read-back': 'Zeigen, wie es gelesen wird',
  'answer-hint':
    'Ohne Anmeldung. Tippen Sie die Steine an oder schreiben Sie: {short}, {other}, „{spoken}“. Vor der Auflösung sieht niemand Antworten oder Wertungen.',
  'scheme-full-line':
    'Bis zu {solved, plural, one {# Punkt} other {# Punkte}} für die ganze Zugfolge, ein Teil davon für einen Teil.',
  'scheme-key-move':
    'Gewertet wird nur der erste Zug: {solved, plural, one {# Punkt} other {# Punkte}}, wenn er richtig ist.',
  'scheme-first-move':
    '{solved, plural, one {# Punkt} other {# Punkte}} für den richtigen Zug, {slower, number} für einen, der einen Zug später matt setzt.',
  'any-defence': 'Jede Verteidigung darf beantwortet werden.',
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

  'standings-empty': 'Noch ist nichts aufgelöst; die Rangliste beginnt mit der ersten Auflösung.',
  'standings-count': '{count, plural, one {# Person} other {# Personen}}',
  'standings-rank': 'Rang',
  'standings-shared': 'geteilt',
  'standings-name': 'Name',
  'standings-solved': 'Gelöst',
  'standings-points': 'Punkte',
  'standings-next': 'Weiter unten',
  'standings-others': 'Staffeln und Folgen',

  'check-title': 'Ist das Ihre Zugfolge?',
  'check-title-several': 'Welche Zugfolge meinen Sie?',
  'check-title-none': 'Keine Zugfolge war zu lesen',
  'check-title-turned': 'Steht Ihr Brett verkehrt herum?',
  'check-none':
    'Nichts in Ihrem Text ist hier ein regelgemäßer Zug. Ändern Sie ihn, oder senden Sie ihn so: Ein Mensch sieht ihn sich an.',
  'check-chatter': 'In diesem Text steht kein Zug. Schreiben Sie, was Sie spielen würden.',
  'check-turned':
    'So geschrieben ist kein Zug regelgemäß. Von der anderen Seite gesehen wäre es die Zugfolge unten; über solche Texte entscheidet die Redaktion.',
  'check-impossible': '„{move}“ ist dort nicht spielbar; davor endet die Lesung.',
  'check-impossible-first':
    '„{move}“ ist in dieser Stellung nicht spielbar. Ändern Sie den Text, oder senden Sie ihn so.',
  'check-first-unread': 'Das Erste, was nach einem Zug aussieht, ist „{move}“.',
  'check-cut': 'Ihr Text wurde nach 4.000 Zeichen abgeschnitten.',
  'check-solver-only': 'Sie haben keine Gegenzüge angegeben; das genügt. Die Lücken bleiben offen.',
  'check-several':
    'Ihr Text passt auf mehr als eine Zugfolge. Sagen Sie, welche Sie meinen, oder lassen Sie es offen.',
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
  gap: 'Gegenzug nicht angegeben',
  'diagram-after': 'Die Stellung nach {move}',
  'diagram-start': 'Die Stellung der Aufgabe',

  receipt: 'Ihre Antwort',
  revealed: 'aufgelöst',
  'receipt-title': 'Ihre Antwort ist da',
  'receipt-received': 'Eingegangen',
  'receipt-in-time': 'Rechtzeitig.',
  'receipt-late': 'Sie kam nach dem Einsendeschluss: Sie bleibt aufbewahrt, zählt aber nicht.',
  'receipt-replaced': 'Sie haben zu dieser Aufgabe später noch einmal geantwortet; jene Antwort zählt.',
  'receipt-reply': 'Sie liest sich als Erwiderung an jemand anderen und zählt nicht.',
  'receipt-waits': 'Vor der Auflösung sieht sie niemand, und über richtig oder falsch wird nichts gesagt.',
  'receipt-not-marked': 'Sie ist noch nicht gewertet. Schauen Sie gleich noch einmal.',
  'receipt-text': 'Wie Sie sie gesendet haben',
  'receipt-name': 'Name:',
  'receipt-read': 'Wie sie gelesen wurde',
  'receipt-unread': 'Kein regelgemäßer Zug war zu lesen. Ein Mensch sieht sie sich an.',
  'receipt-impossible': '„{move}“ ist in dieser Stellung nicht spielbar; deshalb steht hier keine Zugfolge.',
  'receipt-left-open': 'Sie passt auf mehrere Zugfolgen; Sie haben es offen gelassen.',
  'receipt-several': 'Sie passt auf mehrere Zugfolgen; die gewählte ist gekennzeichnet.',
  'receipt-meant': 'diese',
  'receipt-link': 'Link zu Ihrem Beleg',
  'receipt-link-hint':
    'Bewahren Sie ihn auf: Er öffnet diese Seite wieder, und wer ihn hat, kann die Antwort ändern oder zurückziehen.',
  'receipt-change': 'Antwort ändern',
  'receipt-withdraw': 'Antwort zurückziehen',
  'receipt-withdraw-hint':
    'Name und Text werden gelöscht, hier und in der Rangliste. Das lässt sich nicht rückgängig machen.',
  'receipt-withdraw-now': 'Jetzt zurückziehen',
  'receipt-withdrawn-title': 'Zurückgezogen',
  'receipt-withdrawn': 'Name und Text dieser Antwort sind gelöscht. Es bleibt nur, dass es eine gab.',
  look: 'Zweiter Blick',
  'look-ask': 'Um einen zweiten Blick bitten',
  'look-hint':
    'Ein Mensch sieht sich Ihre Wertung noch einmal an, ein einziges Mal. Sagen Sie in höchstens 500 Zeichen, was falsch gelesen oder gewertet wurde; es darf leer bleiben.',
  'look-words': 'Was soll man sich ansehen?',
  'look-send': 'Darum bitten',
  'look-asked': 'Sie haben um einen zweiten Blick gebeten:',
  'look-waits': 'Er wartet auf die Redaktion. Was sie sagt, steht dann hier.',
  'look-stands': 'Noch einmal angesehen: Die Wertung bleibt.',
  'look-changed': 'Noch einmal angesehen: Die Wertung wurde geändert. Oben steht die neue.',
  'look-reply': 'Die Redaktion sagt',
  'look-settled': 'Entschieden:',
  'refused-look-before-reveal': 'Um einen zweiten Blick kann man nach der Auflösung bitten.',
  'refused-look-not-marked': 'Diese Antwort ist noch nicht gewertet. Schauen Sie gleich noch einmal.',
  'refused-look-asked-already':
    'Um einen zweiten Blick wurde schon gebeten; für jede Antwort gibt es einen. Was Sie jetzt gesendet haben, wurde nicht aufbewahrt.',
  'refused-look-withdrawn': 'Die Antwort wurde zurückgezogen; es gibt nichts mehr anzusehen.',
  'refused-look-not-text':
    'Das Feld "words" muss Text von höchstens {most, number} Zeichen sein. Nichts wurde gespeichert.',
  'refused-look-too-long':
    'Das hat {length, number} Zeichen; höchstens {most, number} gehen. Kürzen Sie es und senden Sie es noch einmal.',
  'to-puzzle': 'Zur Aufgabe',
  'play-through': 'Nachspielen',
  'points-of': '{points, plural, one {# Punkt} other {# Punkte}} von {most, number}.',
  'host-decided': 'Das hat die Redaktion entschieden. Das Programm hatte gesagt: {outcome}.',
  ledger: 'Jeder Zug mit seinem Urteil',
  'ledger-filled': 'nicht angegeben; zu Ihren Gunsten ergänzt',
  'ledger-not-verified': 'nicht geprüft',
  'ledger-mate': 'matt',
  'ledger-holds': 'hält',
  'ledger-holds-mate':
    'hält; Matt in {moves, plural, =1 {einem Zug} =2 {zwei Zügen} =3 {drei Zügen} =4 {vier Zügen} =5 {fünf Zügen} other {# Zügen}} folgt',
  'ledger-slower': 'langsamer',
  'ledger-slower-mate':
    'langsamer; Matt in {moves, plural, =1 {einem Zug} =2 {zwei Zügen} =3 {drei Zügen} =4 {vier Zügen} =5 {fünf Zügen} other {# Zügen}} folgt',
  'ledger-slips': 'Fehler',
  'ledger-benefit': 'zählt als richtig: im Zweifel für den Einsender',
  'ledger-unclear': 'unklar',

  solution: 'Lösung',
  'diagram-in-line': 'Eine Stellung der Lösung',
  'to-start': 'Zurück zum Diagramm',
  'other-ways': 'Andere Wege',
  or: 'oder',
  'why-not': 'Warum nicht?',
  'why-not-pick': 'Tippen Sie einen Zug auf dem Brett an, oder wählen Sie hier einen',
  'why-holds': '{move} ist richtig: Der Zug {task, select, draw {hält remis} other {gewinnt}}.',
  'why-holds-mate':
    '{move} ist richtig: Matt in {moves, plural, =1 {einem Zug} =2 {zwei Zügen} =3 {drei Zügen} =4 {vier Zügen} =5 {fünf Zügen} other {# Zügen}}.',
  'why-slower': '{move} setzt auch matt, aber erst in {moves, number} Zügen.',
  'why-slips':
    '{move} scheitert an {reply}; danach {task, select, mate {gibt es in den übrigen Zügen kein Matt} win {ist der Gewinn dahin} other {ist das Remis dahin}}.',
  'why-slips-at-once': '{move} beendet die Sache sofort: Patt oder Remis nach den Regeln.',
  'why-unclear': 'Die Engine konnte in ihrem Rahmen nicht sagen, ob {move} zum Ziel führt.',
  'why-benefit':
    'Die Engine konnte in ihrem Rahmen nicht sagen, ob {move} zum Ziel führt; der Zug zählt also: im Zweifel für den Einsender.',
  'why-unknown': 'Das Lösungsbuch hat noch kein Urteil über {move}.',
  'first-moves': 'Erste Züge von {count, plural, one {# Antwort} other {# Antworten}}',
  'spread-holds': 'richtig',
  'spread-slower': 'setzt später matt',
  'spread-slips-at-once': 'sofort remis',
  'spread-benefit': 'im Zweifel für den Einsender',
  'spread-unclear': 'unklar',
  'spread-rest': 'alles andere',
  share: '{part, number} von {of, number}',
  'share-all': 'alle',
  roll: 'Liste der Löser',
  'roll-count':
    '{count, plural, =0 {Niemand hat sie gelöst.} one {# Zuschauer hat sie gelöst.} other {# Zuschauer haben sie gelöst.}}',
  'roll-more': 'und {count, number} weitere',
  'roll-nameless': '{count, plural, one {und # ohne Namen} other {und # ohne Namen}}',

  'refused-over':
    'Die Lösung ist schon gezeigt. Ihr Text bleibt hier stehen, kann aber nicht mehr gesendet werden.',
  'refused-too-long': 'Der Text hat {length, number} Zeichen; höchstens {most, number} werden genommen.',
  'refused-key':
    'Das Formular kam ohne seinen Schlüssel. Lassen Sie den Text noch einmal lesen und senden Sie von dort.',
  'refused-name-marks':
    'Der Name häuft auf einen Buchstaben mehr Zeichen, als sich zeigen lassen. Lassen Sie einige weg.',
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
  ...correctionsDe,
};
