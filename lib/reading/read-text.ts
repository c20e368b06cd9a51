// What did the viewer mean? Any text becomes zero or more readings: trees of legal moves from the puzzle's
// position (rules R1 to R16). Pure, bounded and the same on any machine.

import { type Kind, kindOf, type Position, parseSquare } from '#lib/rules/position.ts';
import { finish } from './inner/finish.ts';
import { type FoldedText, foldText, placeOf } from './inner/fold-text.ts';
import { withoutHistory, withoutLastMoves } from './inner/history.ts';
import { type Item, itemsOf, type MoveItem } from './inner/items.ts';
import { lexemesOf } from './inner/lexemes.ts';
import type { Budget } from './inner/node.ts';
import { phrasesOf } from './inner/phrases.ts';
import type { ScanContext } from './inner/scan-compact.ts';
import { searchReadings } from './inner/search.ts';
import { pairedItems } from './inner/square-pairs.ts';
import { isPlacement, namesDefence } from './inner/told.ts';
import {
  halfMove,
  isAddressed,
  isCutBySource,
  scanContextOf,
  speaksToSomebody,
  struckByHyphens,
} from './inner/whole-text.ts';
import { READER_VERSION } from './reader-version.ts';
import type { Reading, ReadResult } from './reading.ts';
import { turnShape } from './shape.ts';

/** Most readings kept, whatever is asked for (rule R7). */
const MOST_READINGS = 1000;
/** Steps a text may take; a step is about one lookup of moves. */
const STEPS = 1400;
/** The same for a further look at a text that has given no clean reading. */
const FEWER_STEPS = 700;

/** A total cost above which the thorough search is worth its steps. */
const CLEAN = 6;

interface Task {
  readonly position: Position;
  readonly folded: FoldedText;
  readonly items: readonly Item[];
  readonly context: ScanContext;
  readonly mostReadings: number;
}

/**
 * Reads a text from a position. At most 4,000 characters are looked at, at most 1,000 readings kept, and a
 * fixed number of steps taken, so that no text, however hostile, costs over 20 ms. Readings stand in an order
 * blind to their merit. An empty list: nothing in the text is a move (`chatter`), or nothing that is meant as
 * one could be read (`unreadable`).
 */
export function readText(input: {
  readonly position: Position;
  readonly text: string;
  readonly maxReadings?: number;
}): ReadResult {
  const folded = foldText(input.text);
  const context = scanContextOf(folded.text, input.text);
  const struck = struckByHyphens(folded, input.text);
  const solver = input.position.turn;
  const items = itemsOf(phrasesOf(lexemesOf(folded.text, context)), { struck, solver });
  const mostReadings = Math.max(1, Math.min(MOST_READINGS, input.maxReadings ?? MOST_READINGS));
  const task: Task = { position: input.position, folded, items, context, mostReadings };
  const first = readItems(task).slice(0, mostReadings);
  const isOff = first.length > 0 && first.every((reading) => isOffBoard(reading, input));
  const seenTurned = isOff ? turned(task) : [];
  const asRare = isOff && seenTurned.length === 0 ? inRareLetters(task, struck) : [];
  const asWritten = asRare.length > 0 ? asRare : first;
  const isTold = seenTurned.length === 0 && tellsOnly(task, asWritten);
  const readings = isTold ? [] : seenTurned.length > 0 ? asWritten.map(stoppedAtOnce) : asWritten;
  const looksLikeMove = isTold ? null : (firstMove(items) ?? halfMove(folded.text));
  const isAnswer = readings.length > 0;
  return {
    kind: isAnswer ? 'answer' : looksLikeMove === null ? 'chatter' : 'unreadable',
    readings,
    isCut: folded.isCut,
    isCutBySource: isCutBySource(folded.text),
    isAddressed: isAddressed(folded.text),
    turned: seenTurned,
    firstUnread:
      isAnswer || looksLikeMove === null ? null : placeOf(folded, looksLikeMove.start, looksLikeMove.end),
    readerVersion: READER_VERSION,
  };
}

function readItems(task: Task): Reading[] {
  if (task.items.every((item) => item.type !== 'move')) return [];
  const budget: Budget = { left: STEPS };
  const { position, items, context, mostReadings, folded } = task;
  const base = { position, text: folded.text, items, context, mostReadings };
  let states = searchReadings({ ...base, isThorough: false }, budget);
  if ((states[0]?.cost ?? 0) > CLEAN) {
    const pairs = pairedItems(items);
    const later = withoutHistory(items, position, budget);
    const answer = withoutLastMoves(items, position, budget);
    const others = [pairs, later, answer].filter((list) => list !== null).filter((list) => list.length > 0);
    const tasks = [
      ...others.map((list) => ({ ...base, items: list, isThorough: false })),
      { ...base, isThorough: true },
    ];
    for (const again of tasks) {
      if ((states[0]?.cost ?? 0) <= CLEAN) break;
      const found = searchReadings(again, { left: again.isThorough ? STEPS : FEWER_STEPS });
      if ((found[0]?.cost ?? 0) < (states[0]?.cost ?? 0)) states = found;
    }
  }
  return finish(states, folded).filter(({ line, impossibleAt }) => line.length > 0 || impossibleAt !== null);
}

/** Longest text that is read again with the letters of rare languages, in characters. */
const SHORT = 400;

/**
 * "Acaba Axf7 mi?": letters that a usual language has as well, in a text of which nothing can be played in any of
 * those. Only where all of it can be played (rule R1).
 */
function inRareLetters(task: Task, struck: Uint8Array | null): readonly Reading[] {
  const { folded, position, mostReadings } = task;
  if (task.context.allowsRare || folded.text.length > SHORT) return [];
  const context = { ...task.context, allowsRare: true };
  const lexemes = phrasesOf(lexemesOf(folded.text, context));
  const items = itemsOf(lexemes, { struck, solver: position.turn });
  const found = readItems({ ...task, context, items }).slice(0, mostReadings);
  const isWhole = found.every(
    ({ line, impossibleAt, isGenerous }) => line.length > 0 && impossibleAt === null && !isGenerous,
  );
  return isWhole ? found : [];
}

/** No move is legal here, and those named are the diagram's men, or a defence held against somebody's answer. */
function tellsOnly({ items, position, folded }: Task, readings: readonly Reading[]): boolean {
  if (readings.some(({ line }) => line.length > 0) || items.length === 0) return false;
  if (isPlacement(items, position)) return true;
  if (speaksToSomebody(folded.text)) return true;
  return isAddressed(folded.text) && namesDefence(items, position, { left: STEPS });
}

/**
 * Is nothing legal here as written? A first move that is legal only because its English letter is taken for
 * another language's man ("Ra8" as an Icelandic knight), with an illegal one behind it, is no better than none.
 */
function isOffBoard(reading: Reading, { position, text }: { position: Position; text: string }): boolean {
  const [first, second] = reading.line;
  if (first === undefined) return true;
  if (second !== undefined || reading.impossibleAt === null) return false;
  const letter = ENGLISH_MEN.get(text.charAt(first.start));
  const from = parseSquare(first.uci.slice(0, 2));
  return letter !== undefined && from !== null && letter !== kindOf(position.board[from] ?? 0);
}

const ENGLISH_MEN: ReadonlyMap<string, Kind> = new Map([
  ['K', 'k'],
  ['Q', 'q'],
  ['R', 'r'],
  ['B', 'b'],
  ['N', 'n'],
]);

/** The same text with its first move taken for one that cannot be played. */
function stoppedAtOnce(reading: Reading): Reading {
  const [first] = reading.line;
  if (first === undefined) return reading;
  return { ...reading, line: [], impossibleAt: 1, impossibleSpan: [first.start, first.end] };
}

/**
 * Rule R14: the readings of the whole text on a board turned by 180 degrees, if all of it can be played there.
 * One move is a whole text too, and enough: the rule only raises a doubt, which the host settles. But one move can
 * fit by chance, so there the text must not speak against it. "1..." does: who takes the lower side for White
 * has White to move and writes "1."; the dots say that he knows whose men move, and so which way they go. Several
 * moves that all fit only when turned outweigh the dots. A move that no board has ("Qxz9") fits no turned one either.
 */
function turned(task: Task): readonly Reading[] {
  if (task.items.some((item) => item.type === 'move' && item.isMalformed && item.prose < 2)) return [];
  const items = task.items.map((item) => (item.type === 'move' ? turnItem(item) : item));
  const found = readItems({ ...task, items }).filter(
    ({ line, impossibleAt, isGenerous }) => line.length > 0 && impossibleAt === null && !isGenerous,
  );
  const isOneMove = found.every(({ line }) => line.length === 1);
  return isOneMove && numbersBlack(task) ? [] : found;
}

/** Black is to move, and the first number is written as Black's ("1...", "17. ..."). */
function numbersBlack({ position, items }: Task): boolean {
  const first = items.find((item) => item.type === 'move');
  return position.turn === 'b' && first !== undefined && first.number !== null && first.dots > 1;
}

function turnItem(item: MoveItem): MoveItem {
  return {
    ...item,
    ways: item.ways.map((way) => way.map((step) => ({ ...step, shapes: step.shapes.map(turnShape) }))),
  };
}

/** The first token that looks like a move, for an unreadable text; null in chatter. */
function firstMove(items: readonly Item[]): MoveItem | null {
  for (const item of items)
    if (item.type === 'move' && (item.prose < 2 || item.isHint) && item.rejected < 2 && !item.isStruck) {
      return item;
    }
  return null;
}
