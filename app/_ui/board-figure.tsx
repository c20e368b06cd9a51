import { createElement, type ReactElement } from 'react';
import { describePosition } from '#lib/pictures/describe-position.ts';
import { drawDiagram } from '#lib/pictures/draw-diagram.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { parseSquare, type Square } from '#lib/rules/position.ts';
import { type MessageKey, messageText } from '#lib/words/catalogue/catalogue.ts';
import { boardEn } from '#lib/words/catalogue/en/board.ts';
import type { Locale } from '#lib/words/locale.ts';
import { lettersOf } from './piece-letters.ts';

/** A diagram on a page; with `live` the board module takes it over. */
export interface BoardFigureInput {
  readonly fen: string;
  readonly title: string;
  readonly locale: Locale;
  /** Begins the ids of the drawing; its own on every diagram of a page. */
  readonly id: string;
  /** Last move, UCI. */
  readonly lastMove?: string | null;
  readonly caption?: string;
  readonly live?: BoardBehaviour;
}

/** What the board module does with the diagram. */
export type BoardBehaviour =
  | { readonly mode: 'answer'; readonly field: string; readonly readAt: string }
  | { readonly mode: 'show' }
  /** Asks about a first move: `tryAt` holds MOVE where the move goes. `startFen`: where first moves begin. */
  | { readonly mode: 'try'; readonly tryAt: string; readonly startFen: string };

/** The printed diagram in its plate. */
export function BoardFigure(input: BoardFigureInput): ReactElement {
  const { locale, live } = input;
  const position = parseFen(input.fen);
  if (!position.ok) throw new Error(`not a position: ${input.fen}`);
  const arrow = arrowOf(input.lastMove ?? null);
  const svg = drawDiagram({
    position: position.value,
    title: input.title,
    description: describePosition(position.value, locale),
    id: input.id,
    ...(arrow === null ? {} : { arrow }),
    ...(live === undefined ? {} : { allMen: true }),
  });
  const drawing = { dangerouslySetInnerHTML: { __html: svg } };
  return (
    <figure className="plate">
      {live === undefined ? (
        <div {...drawing} />
      ) : (
        createElement('tailpiece-board', { ...boardData(input, live), ...drawing })
      )}
      {input.caption === undefined ? null : <figcaption>{input.caption}</figcaption>}
    </figure>
  );
}

function boardData(input: BoardFigureInput, live: BoardBehaviour): Readonly<Record<string, string>> {
  return {
    id: 'board',
    'data-fen': input.fen,
    'data-mode': live.mode,
    'data-letters': lettersOf(input.locale),
    'data-words': boardWords(input.locale),
    ...(live.mode === 'answer' ? { 'data-field': live.field, 'data-read': live.readAt } : {}),
    ...(live.mode === 'try' ? { 'data-try': live.tryAt, 'data-start': live.startFen } : {}),
    ...(input.lastMove ? { 'data-last': input.lastMove } : {}),
  };
}

const ONLY_FOR_THE_SERVER = /^(white|black|men-.+)$/;

/** The board's words in a language, as the module takes them. */
function boardWords(locale: Locale): string {
  const keys = Object.keys(boardEn).filter((key) => !ONLY_FOR_THE_SERVER.test(key));
  const words = keys.map((key) => {
    const whole: string = `board.${key}` satisfies string | MessageKey;
    return [key, messageText(locale, whole) ?? ''];
  });
  return JSON.stringify(Object.fromEntries(words));
}

function arrowOf(uci: string | null): readonly [Square, Square] | null {
  if (uci === null) return null;
  const [from, to] = [parseSquare(uci.slice(0, 2)), parseSquare(uci.slice(2, 4))];
  return from === null || to === null ? null : [from, to];
}
