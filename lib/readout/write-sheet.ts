// What does the host read out? The sheet in its order: recall, answer, how you did, the trap, other
// ways, names, over; cut to the length that the dial asks for.

import type { Task } from '#lib/book/terms.ts';
import type { Uci } from '#lib/rules/move.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Side } from '#lib/rules/position.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { writeAnswer } from './inner/answer-words.ts';
import { numberWords } from './inner/number-words.ts';
import { capitalised, spokenUci } from './inner/spoken-uci.ts';
import { thingWords } from './inner/thing-words.ts';
import { orderNames, type SheetName } from './order-names.ts';
import { readingSeconds, WORDS_A_MINUTE } from './reading-time.ts';
import { nearestShare, roundPeople } from './round-figures.ts';

/** The dial: how long the reading may take, in seconds. */
export type SheetLength = 30 | 60 | 90;

/** Everything the sheet is written from. */
export interface SheetFacts {
  readonly fen: string;
  readonly task: Task;
  /** The answer as played: the key first, then the main line; at least one move. */
  readonly line: readonly Uci[];
  /** Moves of the line end in mate or, with the last left out, before it. */
  readonly people: number;
  readonly solved: number;
  /** The most popular wrong first move; null where nobody went wrong. */
  readonly trap: { readonly move: Uci; readonly people: number; readonly by: Uci | null } | null;
  /** Other first moves that work, with how many found each, most first. */
  readonly otherWays: readonly { readonly move: Uci; readonly people: number }[];
  readonly names: readonly SheetName[];
}

/** How the sheet is to be written. */
export interface SheetWish {
  readonly locale: Locale;
  readonly length: SheetLength;
  readonly wordsAMinute?: number;
}

/** A part of the sheet in its order; `lead` is said with weight before the rest. */
export interface SheetPart {
  readonly kind: 'recall' | 'answer' | 'how-you-did' | 'trap' | 'other-ways' | 'over';
  readonly lead: string;
  readonly text: string;
}

/** A name to read, with the words beside it; empty where there is nothing to say. */
export interface SheetNameLine {
  readonly solverId: number;
  readonly name: string;
  readonly beside: string;
  readonly looksLike: string | null;
}

/** The sheet as read: parts before the names, names, and the end. */
export interface Sheet {
  readonly parts: readonly SheetPart[];
  readonly names: readonly SheetNameLine[];
  readonly over: SheetPart;
  /** Names that did not fit. */
  readonly unread: number;
  readonly seconds: number;
}

/** Fewest names kept however short the dial, where there are so many. */
const FEWEST_NAMES = 3;

/**
 * Writes the sheet. All numbers are people in round figures. What does not fit the dial falls away in
 * this order: names beyond the third, other ways, the trap; the estimate says what is left. Throws
 * where the line is not legal: the book never holds such a one.
 */
export function writeSheet(facts: SheetFacts, wish: SheetWish): Sheet {
  const pace = wish.wordsAMinute ?? WORDS_A_MINUTE;
  const ordered = orderNames(facts.names);
  const lines = ordered.map((one) => nameLine(one, wish.locale));
  let parts = allParts(facts, wish.locale);
  const overAfter = (names: readonly SheetNameLine[]): SheetPart => {
    const solvers = ordered.slice(0, names.length).filter(({ isSolver = true }) => isSolver);
    return overPart(solvers.length < facts.solved, wish.locale);
  };
  const secondsOf = (shown: readonly SheetPart[], names: readonly SheetNameLine[]): number =>
    [...shown, overAfter(names)].reduce(
      (sum, part) => sum + readingSeconds(`${part.lead} ${part.text}`, pace),
      0,
    ) + names.reduce((sum, one) => sum + readingSeconds(`${one.name}, ${one.beside}.`, pace), 0);
  for (const kind of ['other-ways', 'trap'] as const) {
    if (secondsOf(parts, lines.slice(0, FEWEST_NAMES)) <= wish.length) break;
    parts = parts.filter((part) => part.kind !== kind);
  }
  let count = Math.min(FEWEST_NAMES, lines.length);
  while (count < lines.length && secondsOf(parts, lines.slice(0, count + 1)) <= wish.length) count += 1;
  const names = lines.slice(0, count);
  return {
    parts,
    names,
    over: overAfter(names),
    unread: lines.length - count,
    seconds: Math.round(secondsOf(parts, names)),
  };
}

/** The whole sheet as plain text, one part a paragraph, for the prompter or a mail. */
export function sheetText(sheet: Sheet): string {
  const paragraphs = sheet.parts.map((part) => `${part.lead} ${part.text}`.trim());
  const names = sheet.names.map((one) => (one.beside === '' ? one.name : `${one.name} (${one.beside})`));
  if (names.length > 0) paragraphs.push(names.join('\n'));
  paragraphs.push(`${sheet.over.lead} ${sheet.over.text}`.trim());
  return `${paragraphs.join('\n\n')}\n`;
}

function allParts(facts: SheetFacts, locale: Locale): SheetPart[] {
  const turn = sideOf(facts.fen);
  const parts: SheetPart[] = [
    { kind: 'recall', lead: '', text: recallText(facts.task, turn, locale) },
    { kind: 'answer', ...writeAnswer(facts, locale) },
    { kind: 'how-you-did', lead: '', text: howYouDid(facts, locale) },
  ];
  const trap = trapText(facts, locale);
  if (trap !== null) parts.push({ kind: 'trap', lead: '', text: trap });
  const ways = otherWaysText(facts, locale);
  if (ways !== null) parts.push({ kind: 'other-ways', lead: '', text: ways });
  return parts;
}

function recallText(task: Task, turn: Side, locale: Locale): string {
  if (task.kind !== 'mate') return say(locale, `readout.recall-${task.kind}`, { side: turn });
  return say(locale, 'readout.recall-mate', { side: turn, moves: numberWords(task.moves, locale) });
}

function peopleWords(people: number, locale: Locale): string {
  const round = roundPeople(people);
  const words = people === 1 ? say(locale, 'readout.one-person') : numberWords(round.people, locale);
  return round.isRounded ? say(locale, 'readout.about', { number: words }) : words;
}

function howYouDid(facts: SheetFacts, locale: Locale): string {
  if (facts.people === 0) return say(locale, 'readout.nobody-answered');
  const answered = say(locale, 'readout.answered', {
    count: facts.people,
    people: peopleWords(facts.people, locale),
  });
  const right =
    facts.people < 20
      ? say(locale, 'readout.right-count', { count: facts.solved, people: peopleWords(facts.solved, locale) })
      : say(locale, `readout.share-${nearestShare(facts.solved, facts.people)}`);
  return capitalised(say(locale, 'readout.answered-and-right', { answered, right }), locale);
}

function trapText(facts: SheetFacts, locale: Locale): string | null {
  const { trap } = facts;
  if (trap === null || facts.people === 0) return null;
  const share = trap.people / facts.people;
  const who = trap.people === 1 ? 'one' : share > 0.5 ? 'most' : share >= 0.15 ? 'many' : 'some';
  const move = spokenUci(facts.fen, [], trap.move, locale);
  const tried = say(locale, 'readout.trap-tried', { who, move });
  if (trap.by === null) return say(locale, 'readout.trap-no-reply', { tried });
  const reply = spokenUci(facts.fen, [trap.move], trap.by, locale);
  return say(locale, `readout.trap-${facts.task.kind}`, { tried, reply });
}

function otherWaysText(facts: SheetFacts, locale: Locale): string | null {
  if (facts.otherWays.length === 0) return null;
  const ways = facts.otherWays.slice(0, 3).map((way) =>
    say(locale, 'readout.other-way', {
      move: spokenUci(facts.fen, [], way.move, locale),
      people: peopleWords(way.people, locale),
      count: way.people,
    }),
  );
  return say(locale, 'readout.other-ways', { ways: ways.join('; ') });
}

function overPart(areOthersLeft: boolean, locale: Locale): SheetPart {
  const key = areOthersLeft ? 'readout.over' : 'readout.over-nobody';
  return { kind: 'over', lead: '', text: say(locale, key) };
}

function nameLine(one: SheetName, locale: Locale): SheetNameLine {
  const beside = one.things
    .slice(0, 2)
    .map((thing) => thingWords(thing, locale))
    .join(', ');
  return { solverId: one.solverId, name: one.name, beside, looksLike: one.looksLike };
}

function sideOf(fen: string): Side {
  const position = parseFen(fen);
  if (!position.ok) throw new Error(`sheet of a position that is none: ${fen}`);
  return position.value.turn;
}
