// Keeps board and answer field together. Moves from the board are written into the field; what is typed
// there is read back by the server after a pause, in any notation, and the board follows where it can.

import type { Position } from '#lib/rules/position.ts';
import {
  type AnswerLine,
  lastPosition,
  lineOf,
  lineText,
  longMove,
  moveNumber,
  nextWord,
  shortenLine,
  startLine,
} from './answer-line.ts';
import { type BoardWords, fill } from './board-words.ts';
import { parseReadBack, type ReadBackReply } from './read-back-reply.ts';

/** What the field needs to know. */
export interface FieldInput {
  readonly start: Position;
  readonly words: BoardWords;
  readonly letters: string;
  /** Address that reads a text back; null where nothing is asked. */
  readonly readAt: string | null;
  show(line: AnswerLine): void;
}

const PAUSE_MS = 900;

/** Starts following; the returned function takes the line after each change on the board. */
export function followField(
  field: HTMLTextAreaElement,
  input: FieldInput,
): (line: AnswerLine, change: 'added' | 'taken-back' | 'cleared') => void {
  const soFar = document.getElementById('so-far');
  /** The text that stands for the board's line; null while the field holds something else. */
  let known: string | null = '';
  let timer = 0;
  let asking: AbortController | null = null;

  function tell(line: AnswerLine | null, note: string): void {
    if (soFar === null) return;
    soFar.hidden = line === null && note === '';
    const label = document.createElement('span');
    label.className = 'label';
    label.textContent = fill(input.words, 'so-far');
    soFar.replaceChildren(label);
    if (line === null) soFar.append(note);
    else soFar.append(...longWords(line, input.letters));
  }

  async function read(): Promise<void> {
    const text = field.value;
    if (input.readAt === null || text === known) return;
    asking?.abort();
    asking = new AbortController();
    try {
      const reply = await askForReading(input.readAt, { text, seen: seenIn(field) }, asking.signal);
      if (field.value !== text || reply === null) return;
      follow(text, reply);
    } catch {
      // Without an answer the text stands as typed; the check page reads it again.
    }
  }

  function follow(text: string, reply: ReadBackReply): void {
    const [first, ...others] = reply.lines;
    const line = first === undefined || others.length > 0 ? null : lineOf(input.start, first);
    if (line === null) {
      known = null;
      const note = others.length > 0 ? 'several' : reply.texts[0] === undefined ? 'unread' : '';
      tell(null, note === '' ? (reply.texts[0] ?? '') : fill(input.words, note));
      return;
    }
    known = text;
    input.show(line);
    tell(line, '');
  }

  field.addEventListener('input', () => {
    clearTimeout(timer);
    if (field.value.trim() === '') {
      known = field.value;
      input.show(startLine(input.start));
      tell(null, '');
      return;
    }
    timer = window.setTimeout(read, PAUSE_MS);
  });
  // A text that the browser kept over a step back belongs on the board as well.
  if (field.value.trim() !== '') timer = window.setTimeout(read, 0);

  return (line, change) => {
    clearTimeout(timer);
    const before = change === 'added' ? shortenLine(line) : null;
    const last = line.moves[line.moves.length - 1];
    const isTyped = known === null || field.value !== known;
    if (isTyped && before !== null && last !== undefined) {
      field.value = `${field.value.trimEnd()} ${nextWord(before, last, input.letters)}`.trimStart();
      known = null;
      timer = window.setTimeout(read, PAUSE_MS);
      return;
    }
    field.value = lineText(line, input.letters);
    known = field.value;
    tell(line.moves.length === 0 ? null : line, '');
  };
}

function longWords(line: AnswerLine, letters: string): (Node | string)[] {
  return line.moves.flatMap((move, i) => {
    const position = line.positions[i] ?? lastPosition(line);
    const text = ` ${longMove(move, letters)} `;
    if (position.turn !== 'w' && i > 0) return [text];
    const number = document.createElement('b');
    number.textContent = `${moveNumber(line.positions[0], i)}${position.turn === 'w' ? '' : ' …'}`;
    return [number, text];
  });
}

/** Which revision of the puzzle this page shows: it may have been corrected since (rule A6). */
function seenIn({ form }: HTMLTextAreaElement): string {
  const field = form?.elements.namedItem('seen');
  return field instanceof HTMLInputElement ? field.value : '';
}

async function askForReading(
  address: string,
  sent: { readonly text: string; readonly seen: string },
  signal: AbortSignal,
): Promise<ReadBackReply | null> {
  const reply = await fetch(address, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', Accept: 'application/json' },
    body: JSON.stringify(sent),
    signal,
  });
  return reply.ok ? parseReadBack(await reply.json()) : null;
}
