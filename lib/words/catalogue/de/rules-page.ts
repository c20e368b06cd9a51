// How answers are read and marked, in short, in German.

import type { rulesPageEn } from '../en/rules-page.ts';

export const rulesPageDe: Readonly<Record<keyof typeof rulesPageEn, string>> = {
  outcomes: 'Was eine Antwort sein kann',
  'label-solved': 'Gelöst',
  'means-solved': 'Jeder Ihrer Züge hält, so weit die Aufgabe reicht.',
  'label-slower': 'Matt, aber später',
  'means-slower': 'Es ist immer noch erzwungenes Matt, einen Zug später als verlangt.',
  'label-unfinished': 'Bis hierher richtig',
  'means-unfinished':
    'Richtig, so weit die Zugfolge geht; sie hört zu früh auf oder beantwortet eine Verteidigung, die nicht die beste ist.',
  'label-slipped': 'Fehler im … Zug',
  'means-slipped': 'Es beginnt gut; bei diesem Zug kommt der Verteidiger davon. Sie erfahren, wie.',
  'label-wrong': 'Falscher erster Zug',
  'means-wrong': 'Der erste Zug führt nicht zum Ziel. Sie erfahren den Gegenzug, der ihn widerlegt.',
  'label-impossible': 'Im … Zug nicht regelgemäß',
  'means-impossible': 'Ein Zug ist in der Stellung, die Ihre Zugfolge erreicht hat, nicht spielbar.',
  'label-unclear': 'Das entscheidet die Redaktion',
  'means-unclear':
    'Die Engine kann es in ihrem Rahmen nicht sagen, oder ein Text braucht einen Menschen. Die Redaktion entscheidet.',
  reading: 'Wie Ihr Text gelesen wird',
  'reading-any':
    'Jede Schreibweise und jede Sprache ist recht, mit oder ohne Zugnummern, mit Worten zwischen den Zügen. Nur regelgemäße Züge zählen.',
  'reading-shown':
    'Sie sehen vor dem Absenden, was gelesen wurde. Passt ein Text auf mehrere Zugfolgen, können Sie sagen, welche Sie meinen, oder es offen lassen; dann gilt die für Sie bessere, aber nie ein anderes Feld oder eine andere Figur.',
  'reading-gaps': 'Die Gegenzüge dürfen fehlen. Eine Lücke wird zu Ihren Gunsten gefüllt.',
  'reading-corrections':
    'Wenn Sie sich verbessern, sagen Sie es: „nein, doch“, „stattdessen“, „ich meinte“. Sonst zählt von zwei Zügen an derselben Stelle der schlechtere.',
  'reading-claims': 'Was Sie über die Züge sagen („gewinnt“, „matt in 4“, „!“), ändert nichts.',
  judging: 'Wie Ihre Zugfolge beurteilt wird',
  'judging-verified':
    'Jeder Zug wird von einer Engine bis zum Ende geprüft, in festem Rahmen und nie nach der Uhr: Dieselbe Antwort erhält auf jedem Rechner dieselbe Wertung. Anerkannte Matts und Widerlegungen spielt ein unabhängiger Prüfer nach.',
  'judging-any-way': 'Jeder Weg, der geht, zählt, nicht nur der vorgesehene.',
  'judging-replies':
    'Ihre Zugfolge sollte einem ernsthaften Gegenzug begegnen: einem, der so lange hält wie jeder andere, oder einem, der schlägt, was Sie anbieten.',
  'judging-far':
    'Wie weit es gehen soll, steht unter der Aufgabe. In Mattaufgaben dürfen der letzte Gegenzug und der Mattzug fehlen, wenn die Aufgabe nichts anderes sagt; ist Ihre Zugfolge fertig, kostet das Weitere nichts.',
  'judging-branches': 'Geben Sie mehrere Zugfolgen gegen verschiedene Gegenzüge an, zählt die beste.',
  points: 'Punkte',
  'points-full':
    'Ganze Zugfolge: 5 für gelöst; 2 für ein späteres Matt, oder mehr, wenn mehr davon hält; sonst 1 und bis zu 3 weitere für den Teil, der hält, sobald der erste Zug hält; andernfalls 0.',
  'points-key':
    'Schlüsselzug, wo die Aufgabe es sagt: 5, wenn der erste Zug hält, 2, wenn er später matt setzt, sonst 0.',
  'points-kinder':
    'Beides ist freundlicher als Lösungsturniere, die ab drei Zügen für den Schlüssel allein nichts geben und nichts für ein späteres Matt.',
  'points-never-less':
    'Weiterschreiben kostet nie: Eine Antwort erhält nie weniger als dieselbe, früher abgebrochen.',
  'points-last':
    'Es zählt die letzte Antwort, die vor dem Einsendeschluss einging. Die Zeit ändert die Punkte nie; wer gleich viele hat, teilt den Rang.',
  after: 'Nach dem Absenden',
  'after-reveal':
    'Vor der Auflösung sieht niemand Antworten oder Wertungen, auch Sie nicht. Danach zeigt Ihr Beleg die Wertung, das Urteil über jeden Zug und den Grund.',
  'after-comments': 'Kommentare, die Sie anderswo schreiben, sind dort öffentlich; das liegt nicht bei uns.',
  'after-look':
    'Nach der Auflösung können Sie auf Ihrem Beleg einmal um einen zweiten Blick bitten; die Redaktion entscheidet. Einen Zug, den die Engine nicht klären konnte und über den bis zur Auflösung niemand entschied, wertet sie im Zweifel für den Einsender. Die Redaktion kann eine Wertung mit Begründung ändern; das Urteil der Engine bleibt daneben sichtbar.',
  'after-regrade':
    'Stellt sich später etwas heraus, werden alle nach demselben Maß noch einmal bewertet. Nach der Auflösung kann eine Wertung so steigen; sie fällt nur, wenn die Redaktion es für diese eine Antwort entscheidet.',
  'after-correction':
    'Eine Aufgabe kann berichtigt, verlängert oder aus der Wertung genommen werden; ein Hinweis auf ihrer Seite sagt es, und die Adresse bleibt. Ihre Antwort wird an der Stellung gemessen, die Sie gesehen haben; wo das nicht zu sagen ist, an der für Sie günstigeren. Eine Aufgabe außer Wertung gibt keine Punkte und unterbricht keine Serie.',
  privacy: 'Was von Ihnen bleibt',
  'privacy-kept':
    'Ihr Text, Ihr Name, wenn Sie einen angegeben haben, die Zeiten, die Sprache Ihres Browsers und ein Cookie, an dem Ihre nächste Antwort als Ihre erkannt wird. Ihre Netzadresse bleibt nur als verschlüsselter Abdruck, für Grenzen, höchstens 7 Tage.',
  'privacy-withdraw':
    'Mit dem Link Ihres Belegs können Sie eine Antwort jederzeit zurückziehen: Name und Text werden gelöscht, auch in der Rangliste.',
  'privacy-law':
    'Wo es Preise gibt oder Minderjährige teilnehmen können, gilt örtliches Recht zu Gewinnspielen, Preisen und Datenschutz. Nichts hier ist Rechtsrat; die Redaktion sollte jemanden fragen, der dazu zugelassen ist.',
};
