// Which lines does the solution page print? The published ones as the reader reads them; in a mate task the
// proof's variations; then the other ways that hold.

import { BENEFIT_OF_DOUBT, type SolutionBook } from '#lib/book/solution-book.ts';
import type { Proof } from '#lib/checker/proof.ts';
import { proofVariations } from '#lib/puzzle/proof-lines.ts';
import { readText } from '#lib/reading/read-text.ts';
import type { Uci } from '#lib/rules/move.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Position } from '#lib/rules/position.ts';
import { bookPosition } from '#lib/rules/position-key.ts';
import { findUci } from '#lib/rules/uci.ts';

/** A printed line from the puzzle's position. */
export interface SolutionLine {
  readonly kind: 'published' | 'variation' | 'other-way';
  readonly moves: readonly Uci[];
  /** Plies at the beginning that the line before has shown already and that are not printed again. */
  readonly from: number;
  /** The first move counts as holding because it was left unclear at the reveal (rule V8). */
  readonly isBenefit?: true;
  /** Other replies in the place of the first reply, met by the same next move. */
  readonly sameAs: readonly Uci[];
}

const MOST_VARIATIONS = 24;
const MOST_OTHER_WAYS = 8;

/** The lines in the order of print; every one is legal from the start. */
export function solutionLines(input: {
  readonly start: Position;
  readonly published: readonly string[];
  readonly keys: readonly Uci[];
  readonly book: SolutionBook;
  readonly movesLeft: number | null;
  /** Proof of the first key; null where there is none. */
  readonly proof: Proof | null;
}): SolutionLine[] {
  const { start, keys } = input;
  const published = input.published
    .map((text) => publishedLine(start, text))
    .filter((moves) => moves.length > 0)
    .map((moves): SolutionLine => ({ kind: 'published', moves, from: 0, sameAs: [] }));
  const lines = joinMain([...published, ...variations(input, published[0]?.moves ?? [])]);
  const shown = new Set(lines.map((line) => line.moves[0]));
  const others = keys.filter((key) => !shown.has(key)).slice(0, MOST_OTHER_WAYS);
  for (const key of others) {
    const place = { position: bookPosition(start), movesLeft: input.movesLeft, move: key };
    const row = input.book.find(place);
    const benefit =
      input.book.ruling(place)?.reason === BENEFIT_OF_DOUBT ? ({ isBenefit: true } as const) : {};
    const rest = row?.evidence.kind === 'search' || row?.evidence.kind === 'table' ? row.evidence.line : [];
    const kind = lines.length === 0 ? 'published' : 'other-way';
    lines.push({ kind, moves: playable(start, [key, ...rest]), from: 0, sameAs: [], ...benefit });
  }
  return lines;
}

/** Where a variation begins like the main line and goes on to the mate, it takes the main line's place. */
function joinMain(lines: readonly SolutionLine[]): SolutionLine[] {
  const [main, ...others] = lines;
  if (main === undefined) return [];
  const longer = others.find(
    (line) => line.kind === 'variation' && main.moves.every((uci, ply) => line.moves[ply] === uci),
  );
  if (longer === undefined || main.moves.length < 2) return [...lines];
  return [{ ...longer, kind: 'published', from: 0 }, ...others.filter((line) => line !== longer)];
}

function variations(input: { start: Position; proof: Proof | null }, main: readonly Uci[]): SolutionLine[] {
  const { start, proof } = input;
  const key = proof?.nodes[0]?.move;
  if (proof === null || key === undefined) return [];
  const found = proofVariations(proof).slice(0, MOST_VARIATIONS);
  const lines: SolutionLine[] =
    main.length > 0 ? [] : [{ kind: 'published', moves: [key], from: 0, sameAs: [] }];
  for (const { replies, line } of found) {
    const [reply, ...sameAs] = replies;
    if (reply === undefined) continue;
    lines.push({ kind: 'variation', moves: playable(start, [key, reply, ...line]), from: 1, sameAs });
  }
  return lines;
}

/** The first reading of a published line, up to its first gap: a page can play only what follows move by move. */
function publishedLine(start: Position, text: string): Uci[] {
  const [reading] = readText({ position: start, text }).readings;
  const moves = reading?.line ?? [];
  const gap = moves.findIndex((move, ply) => move.by !== (ply % 2 === 0 ? 'solver' : 'defender'));
  return playable(
    start,
    moves.slice(0, gap < 0 ? moves.length : gap).map((move) => move.uci),
  );
}

function playable(start: Position, moves: readonly Uci[]): Uci[] {
  const played: Uci[] = [];
  let position = start;
  for (const uci of moves) {
    const move = findUci(position, uci);
    if (move === null) break;
    position = playMove(position, move);
    played.push(uci);
  }
  return played;
}
