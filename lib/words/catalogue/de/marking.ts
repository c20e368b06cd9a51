// Outcomes, flags and explanations of marks in German.

import type { markingEn } from '../en/marking.ts';

export const markingDe: Readonly<Record<keyof typeof markingEn, string>> = {
  'outcome-solved': 'Gelöst',
  'outcome-slower': 'Matt, aber später',
  'outcome-unfinished': 'Bis hierher richtig',
  'outcome-slipped': 'Fehler im {move, number}. Zug',
  'outcome-wrong': 'Falscher erster Zug',
  'outcome-impossible': 'Im {move, number}. Zug nicht regelgemäß',
  'outcome-ambiguous': 'Zwei Lesarten',
  'outcome-unclear': 'Das entscheidet die Redaktion',
  'outcome-unreadable': 'Nicht lesbar',
  'outcome-chatter': 'Keine Antwort',
  'outcome-slower-not-shown': 'Matt später, nicht bis zum Ende gezeigt',
  'why-solved': 'Richtig.',
  'why-slower':
    '{move} setzt auch matt, bei bester Verteidigung aber erst im {mateOn, number}. Zug; verlangt war Matt in {asked, number}.',
  'why-slower-before': '{move} setzt auch matt, aber erst im {mateOn, number}. Zug.',
  'why-unfinished': 'So weit richtig, aber die Zugfolge hört zu früh auf.',
  'why-missing': '{missing, plural, one {Ein weiterer Zug war} other {# weitere Züge waren}} nötig.',
  'why-goes-on': 'So hätte es weitergehen können: {line}.',
  'why-slower-not-shown':
    '{move} setzt auch matt, aber erst im {mateOn, number}. Zug, und die Antwort endet, bevor sie das Matt zeigt.',
  'why-weak-defence':
    'So weit richtig, aber {reply} ist nicht die beste Verteidigung; was danach kommt, zählt nicht.',
  'why-weak-reply': '{reply} ist nicht die beste Verteidigung; was danach kommt, zählt nicht.',
  'why-better-defence': 'Was folgt auf {reply}?',
  'why-slip-no-mate':
    '{left, plural, =0 {{move} setzt nicht matt: {side, select, w {Weiß} other {Schwarz}} hat noch {reply}.} other {Nach {move} spielt {side, select, w {Weiß} other {Schwarz}} {reply}, und }}{left, plural, =0 {} =1 {im nächsten Zug gibt es kein Matt.} =2 {ein Matt in zwei Zügen gibt es nicht.} =3 {ein Matt in drei Zügen gibt es nicht.} =4 {ein Matt in vier Zügen gibt es nicht.} =5 {ein Matt in fünf Zügen gibt es nicht.} other {ein Matt in # Zügen gibt es nicht.}}',
  'why-slip-too-late': '{move} setzt nicht matt, und es bleibt kein Zug mehr dafür.',
  'why-slip-no-win':
    'Nach {move} spielt {side, select, w {Weiß} other {Schwarz}} {reply}, und der Gewinn ist dahin.',
  'why-slip-no-draw':
    'Nach {move} spielt {side, select, w {Weiß} other {Schwarz}} {reply}, und das Remis ist dahin.',
  'why-slip-known': '{move} reicht nicht aus.',
  'why-slip-stalemate': '{move} setzt patt.',
  'why-slip-draw': 'Nach {move} ist die Partie remis.',
  'why-slip-repetition': 'Nach {move} steht die Stellung zum dritten Mal da: remis.',
  'why-slip-mated': 'Nach {move} spielt {side, select, w {Weiß} other {Schwarz}} {reply}, und das ist matt.',
  'why-defence-line': 'Zum Beispiel {line}.',
  'why-defence-line-stalemate': 'Zum Beispiel {line}, patt.',
  'why-better-move': '{count, plural, one {{moves} war der Zug.} other {Richtig waren diese Züge: {moves}.}}',
  'why-worse-of-two': 'Für dieselbe Stelle stehen zwei Züge da; der schlechtere zählt.',
  'why-good-before':
    '{count, plural, one {Der erste Zug ist richtig.} other {Die ersten # Züge sind richtig.}}',
  'why-impossible': '„{text}“ ist im {at, number}. Zug nicht spielbar.',
  'why-impossible-no-text': 'Was für den {at, number}. Zug dasteht, ist nicht spielbar.',
  'why-unclear-verdict':
    'Die Engine konnte {move} in ihrem Rahmen nicht klären; das entscheidet die Redaktion.',
  'why-not-verified': 'Ein Teil dieser Antwort ließ sich nicht prüfen; das entscheidet die Redaktion.',
  'why-too-many-fillings':
    'Es fehlen zu viele Gegenzüge, um alle auszuprobieren; das entscheidet die Redaktion.',
  'why-two-readings': 'Der Text lässt sich auf zwei Arten lesen ({moves}), und sie sind nicht gleich gut.',
  'why-two-readings-host':
    'Der Text lässt sich auf zwei Arten lesen ({moves}), und sie sind nicht gleich gut; das entscheidet die Redaktion.',
  'why-unreadable': 'Bei „{text}“ ließ sich kein Zug erkennen.',
  'why-unreadable-no-text': 'Im Text ließ sich kein Zug erkennen.',
  'why-board-turned':
    'Das liest sich wie Züge auf einem Brett von der anderen Seite; das entscheidet die Redaktion.',
  'why-parked':
    'Diese Antwort konnte das Programm nicht werten; die Redaktion sieht sie sich an. Nichts davon ist verloren.',
  'why-chatter': 'Nichts in diesem Text sieht nach einem Zug aus.',
  'and-other-way': 'Es ist nicht der veröffentlichte Weg, aber ebenso gut.',
  'and-found-both': 'Beide angegebenen Züge sind richtig.',
  'and-generous': 'Wo der Text nicht eindeutig war, wurde er zu Ihren Gunsten gelesen.',
  'and-typo': 'Ein Tippfehler wurde berichtigt.',
  'and-past-the-end':
    'Was danach noch dasteht, geht nicht; es wurde aber nicht mehr gebraucht und kostet nichts.',
  'and-still-winning': 'Die Stellung bleibt gewonnen, aber das verlangte Matt gibt es so nicht.',
  'and-cut-by-source': 'Der Text wurde dort, wo er herkommt, abgeschnitten; die Redaktion sieht ihn sich an.',
  'and-benefit-of-doubt':
    'Ein Zug, über den nicht zu entscheiden war, zählt als richtig: im Zweifel für den Einsender.',
  'how-far-mate-now': 'Der Mattzug genügt.',
  'how-far-first-move': 'Der erste Zug genügt.',
  'how-far-mate': 'Bis zum Matt; der letzte Zug darf fehlen.',
  'how-far-mate-written': 'Bis zum Matt; der Mattzug gehört dazu.',
  'how-far-win': 'Bis der Gewinn für alle klar ist.',
  'how-far-win-about':
    'Bis der Gewinn für alle klar ist ({moves, plural, one {vielleicht genügt der erste Zug} other {etwa # Züge}}).',
  'how-far-draw': 'Bis das Remis sicher ist.',
  'how-far-draw-about':
    'Bis das Remis sicher ist ({moves, plural, one {vielleicht genügt der erste Zug} other {etwa # Züge}}).',
  'how-far-pinned': '{moves, plural, one {Ein guter Zug genügt.} other {# gute Züge genügen.}}',
};
