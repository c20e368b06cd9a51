// Viewers found what the book did not know at publication: another way that works, or a shorter mate. The
// host is told, and offered to mark everybody again (rule A5). All of it follows from stored facts.

import { createTree, movesTo, type PositionTree, type TreeNode } from '#lib/book/position-tree.ts';
import { readPublishedLines } from '#lib/book/published-lines.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { findOtherWay } from '#lib/marking/other-way.ts';
import type { Uci } from '#lib/rules/move.ts';
import { db } from '#lib/store/client.ts';
import {
  listOtherWays,
  loadKnownSince,
  loadLastMarkedAgain,
  type OtherWayMarks,
} from '#lib/store/other-ways.ts';
import type { PuzzleRecord } from '#lib/store/puzzles.ts';
import { type LoadedBook, loadBook } from '../answers/loaded-book.ts';

/** A move that the book has learnt to hold since publication, and who gave it. */
export interface NewWay {
  /** From the diagram up to the move. */
  readonly moves: readonly Uci[];
  /** Solver moves to mate from the diagram where that is shorter than the published way; null otherwise. */
  readonly shorter: number | null;
  /** The host ruled that it holds (rule V8). */
  readonly isRuled: boolean;
  readonly people: number;
  /** Up to three names. */
  readonly names: readonly string[];
  /** Everybody has been marked again since. */
  readonly isMarkedSince: boolean;
}

const MOST_LINES = 500;

/** The new ways, those of most people first; empty before publication. */
export async function showNewWays(puzzle: PuzzleRecord): Promise<NewWay[]> {
  const { publishedAt, verifiedAt } = puzzle;
  const loaded = publishedAt === null ? null : await loadBook(db(), puzzle);
  if (publishedAt === null || loaded === null) return [];
  const before = Math.max(publishedAt.getTime(), verifiedAt?.getTime() ?? 0);
  const markedAgain = (await loadLastMarkedAgain(db(), puzzle.id))?.getTime() ?? 0;
  const ways: NewWay[] = [];
  for (const way of groupWays(loaded.terms, await listOtherWays(db(), puzzle, MOST_LINES))) {
    const key = keyOf(loaded.terms, way);
    const version = { engineVersion: loaded.engineVersion, budgets: loaded.bookVersion };
    const known = await loadKnownSince(db(), puzzle.id, { version, key });
    const row = loaded.book.find(key);
    const isRuled = row?.verdict !== 'holds';
    const since = (isRuled ? known.ruling : known.row)?.getTime() ?? 0;
    if (since <= before) continue;
    ways.push({
      moves: [...movesTo(way.node), way.move],
      shorter: shorterBy(loaded, way, row?.mateIn ?? null),
      isRuled,
      people: way.people,
      names: way.names,
      isMarkedSince: since <= markedAgain,
    });
  }
  return ways;
}

interface Way {
  readonly node: TreeNode;
  readonly move: Uci;
  /** Published moves at the same position. */
  readonly published: readonly Uci[];
  readonly people: number;
  readonly names: readonly string[];
}

/** Lines that leave the published ones by the same move are one way. */
function groupWays(terms: PuzzleTerms, lines: readonly OtherWayMarks[]): Way[] {
  const tree = createTree(terms.fen);
  const published = readPublishedLines(terms, tree);
  const ways = new Map<string, Way>();
  for (const { line, p, people, names } of lines) {
    const end = playAll(tree, line.slice(0, Math.max(0, 2 * p - 1)));
    const node = end === null ? null : findOtherWay(published, end, p);
    const move = node === null ? undefined : line[node.ply];
    if (node === null || move === undefined) continue;
    const place = `${node.key} ${move}`;
    const known = ways.get(place);
    ways.set(place, {
      node: known?.node ?? node,
      move,
      published: [...(published.movesAt(node.key) ?? [])],
      people: people + (known?.people ?? 0),
      names: [...(known?.names ?? []), ...names].slice(0, 3),
    });
  }
  return [...ways.values()].sort((a, b) => b.people - a.people);
}

function playAll(tree: PositionTree, moves: readonly Uci[]): TreeNode | null {
  let node: TreeNode | null = tree.root;
  for (const move of moves) node = node === null ? null : tree.play(node, move);
  return node;
}

function keyOf(terms: PuzzleTerms, { node, move }: Pick<Way, 'node' | 'move'>) {
  const movesLeft = terms.task.kind === 'mate' ? terms.task.moves - (node.ply >> 1) : null;
  return { position: node.bookPosition, movesLeft, move };
}

function shorterBy({ terms, book }: LoadedBook, way: Way, mateIn: number | null): number | null {
  if (terms.task.kind !== 'mate' || mateIn === null) return null;
  const longer = way.published.map(
    (move) => book.find(keyOf(terms, { node: way.node, move }))?.mateIn ?? null,
  );
  const isShorter = longer.length > 0 && longer.every((one) => one !== null && one > mateIn);
  return isShorter ? (way.node.ply >> 1) + mateIn : null;
}
