// Which moves has the host published? Read once by the reader like a viewer's text (rule V9), then looked
// up by every answer: published replies are adequate (rule O2), published moves are the measure of another
// way and of what was needed (O0).

import { readText } from '#lib/reading/read-text.ts';
import type { Uci } from '#lib/rules/move.ts';
import type { PositionTree, TreeNode } from './position-tree.ts';
import type { PuzzleTerms } from './terms.ts';

/** One published line as moves from the puzzle's position, up to its first gap or unreadable place. */
export interface PublishedLine {
  readonly text: string;
  readonly moves: readonly Uci[];
}

/** Published lines, and what they say of a position. */
export interface PublishedLines {
  readonly lines: readonly PublishedLine[];
  /** Solver's moves published at a position, under its key with the side to move; null where no line passes. */
  movesAt(key: string): ReadonlySet<Uci> | null;
  /** True where a published line passes through a position, whoever is to move. */
  isReached(key: string): boolean;
  /** True where a published line plays this reply at this position. */
  isReply(key: string, reply: Uci): boolean;
  /** The lines that share the longest beginning with the moves given; all of them where none shares any. */
  closest(moves: readonly Uci[]): readonly PublishedLine[];
}

/** Number of solver moves of a line. */
export function solverMovesOf(line: PublishedLine): number {
  return Math.ceil(line.moves.length / 2);
}

/** Reads the published lines of a puzzle. Lines that cannot be read come back without moves. */
export function readPublishedLines(terms: PuzzleTerms, tree: PositionTree): PublishedLines {
  const lines = terms.published.map((text) => ({ text, moves: readLine(text, tree) }));
  const places = new Map<string, Set<Uci>>();
  for (const { moves } of lines) {
    let node: TreeNode | null = tree.root;
    for (const move of moves) {
      if (node === null) break;
      const known: Set<Uci> = places.get(node.key) ?? new Set();
      places.set(node.key, known.add(move));
      node = tree.play(node, move);
    }
    if (node !== null && !places.has(node.key)) places.set(node.key, new Set());
  }
  return {
    lines,
    movesAt: (key) => places.get(key) ?? null,
    isReached: (key) => places.has(key),
    isReply: (key, reply) => places.get(key)?.has(reply) ?? false,
    closest: (moves) => closestLines(lines, moves),
  };
}

function readLine(text: string, tree: PositionTree): Uci[] {
  const [reading] = readText({ position: tree.root.position, text }).readings;
  const moves: Uci[] = [];
  for (const { uci, by } of reading?.line ?? []) {
    if (by !== (moves.length % 2 === 0 ? 'solver' : 'defender')) break;
    moves.push(uci);
  }
  return moves;
}

function closestLines(lines: readonly PublishedLine[], moves: readonly Uci[]): readonly PublishedLine[] {
  const shared = lines.map((line) => sharedLength(line.moves, moves));
  const longest = Math.max(0, ...shared);
  return lines.filter((_, at) => shared[at] === longest);
}

function sharedLength(line: readonly Uci[], moves: readonly Uci[]): number {
  let length = 0;
  while (length < line.length && line[length] === moves[length]) length += 1;
  return length;
}
