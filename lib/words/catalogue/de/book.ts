// Sentences of the soundness report in German.

import type { bookEn } from '../en/book.ts';

export const bookDe: Readonly<Record<keyof typeof bookEn, string>> = {
  'claim-true-mate': 'Richtig: Matt in {moves, number} lässt sich erzwingen.',
  'claim-true-win': 'Richtig: Der Gewinn ist da.',
  'claim-true-draw': 'Richtig: Das Remis ist da.',
  'claim-shorter': 'Es geht schneller: Matt in {moves, number}.',
  'claim-false-mate': 'Falsch: Kein erster Zug erzwingt Matt in {moves, number}.',
  'claim-false-win': 'Falsch: Kein erster Zug erreicht die Gewinngrenze.',
  'claim-false-draw': 'Falsch: Kein erster Zug hält remis.',
  'claim-true-task': 'Es ist ein Matt in {moves, number}.',
  'claim-unclear': 'Im gesetzten Rahmen nicht geklärt: {moves}. Kein anderer erster Zug hält.',
  'claim-some-unclear': 'Im gesetzten Rahmen nicht geklärt: {moves}.',
  'claim-needs-end':
    'Das Ergebnis ist schon im Diagramm klar, sodass nichts sagt, wann eine Antwort vollständig ist: eine Zugfolge veröffentlichen oder die Zahl der Züge festlegen.',
  'keys-unique': 'Ein erster Zug hält: {move}.',
  'keys-many': '{count, plural, one {Ein erster Zug hält} other {# erste Züge halten}}: {moves}.',
  'move-mate': '{move} (Matt in {moves, number})',
  'move-value': '{move} ({value})',
  'and-more': '{moves} und {more, number} weitere',
  slower:
    '{count, plural, one {Ein erster Zug setzt} other {# erste Züge setzen}} einen Zug später matt: {moves}.',
  dual: 'Nach {line} geht nicht nur {published}, sondern auch {others}.',
  'dual-at-start': 'Es geht nicht nur {published}, sondern auch {others}.',
  try: '{move} scheitert an {line}.',
  'try-ends': '{move} scheitert: Damit ist die Partie zu Ende.',
  'values-row': 'Vom besten an: {row}. Hält ab {hold}, verfehlt bis {slip}.',
  'values-many': '{count, number} erste Züge halten: mehr, als die meisten erwarten.',
  'values-propose': 'Eine Grenze von {bound} läge in der größten Lücke.',
  'values-simpler':
    'Einfacher als deine Lösung: {moves} gewinnt sofort und deutlich; die meisten werden das angeben.',
  checks: '{passed, number} von {checkable, number} nachspielbaren Urteilen sind nachgespielt und bestätigt.',
  'checks-too-large': '{count, plural, one {Eines war} other {# waren}} zum Nachspielen zu groß.',
  'checks-failed':
    '{count, plural, one {Eine Prüfung ist} other {# Prüfungen sind}} gescheitert: Die Urteile gelten als ungeklärt. Bitte melden.',
  'checks-none':
    'Werte einer Suche und Ergebnisse von Tabellen lassen sich nicht nachspielen ({count, number} Urteile).',
  'opinion-named': 'Das Programm aus der Einstellung („{name}“)',
  'opinion-nameless': 'Das Programm aus der Einstellung',
  'opinion-mate':
    '{who} würde {move} spielen (Matt in {moves, number}{depth, plural, =-1 {} other {, Tiefe #}}).',
  'opinion-mated':
    '{who} würde {move} spielen (und in {moves, number} mattgesetzt{depth, plural, =-1 {} other {, Tiefe #}}).',
  'opinion-value': '{who} würde {move} spielen ({value}{depth, plural, =-1 {} other {, Tiefe #}}).',
  'opinion-move':
    '{who} würde {move} spielen und nennt keinen Wert{depth, plural, =-1 {} other { (Tiefe #)}}.',
  'opinion-beside': 'Das steht neben den Urteilen und ändert keines.',
  'opinion-cannot-start': 'Keine brauchbare Antwort: Das Programm ließ sich nicht starten.',
  'opinion-no-answer': 'Keine brauchbare Antwort: Es hat zu lange gedauert.',
  'opinion-ended': 'Keine brauchbare Antwort: Das Programm endete, bevor es geantwortet hatte.',
  'opinion-too-much-output': 'Keine brauchbare Antwort: Das Programm hörte nicht auf zu reden.',
  'opinion-illegal-move': 'Keine brauchbare Antwort: Der genannte Zug ist hier nicht möglich.',
  'opinion-illegal-line': 'Keine brauchbare Antwort: Die erwartete Variante ist hier nicht möglich.',
  'opinion-set-aside':
    'Nicht gefragt: Das Programm hat dreimal nacheinander versagt und bleibt bis zum nächsten Start von Tailpiece beiseite.',
};
