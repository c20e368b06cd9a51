// What comes out of the search: readings with places in the original text, each once, in an order that
// knows nothing of their merit (rule R6).

import type { Reading, ReadLine, ReadMove } from '../reading.ts';
import { type FoldedText, placeOf } from './fold-text.ts';
import { type Node, pathTo } from './node.ts';
import { endLine, type State } from './state.ts';

/**
 * The readings of the surviving states, sorted by their moves. What was turned down earns and costs nothing: of
 * readings that differ in that alone the one that shows most stands for all.
 */
export function finish(states: readonly State[], folded: FoldedText): Reading[] {
  const byMoves = new Map<string, Reading>();
  for (const state of states) {
    const reading = readingOf(state, folded);
    const key = keyOf(reading);
    const same = byMoves.get(key);
    if (same === undefined || showsMore(reading, same)) byMoves.set(key, reading);
  }
  return [...byMoves.entries()].sort(([one], [two]) => (one < two ? -1 : 1)).map(([, reading]) => reading);
}

function showsMore({ tries: one }: Reading, { tries: two }: Reading): boolean {
  const moves = (tries: readonly ReadLine[]): number => tries.reduce((sum, line) => sum + line.length, 0);
  return moves(one) > moves(two);
}

function keyOf(reading: Reading): string {
  const words = (line: ReadLine): string => line.map(({ uci }) => uci).join(' ');
  const lines = (list: readonly ReadLine[]): string => list.map(words).sort().join(';');
  return [
    words(reading.line),
    lines(reading.branches),
    lines(reading.choices),
    reading.impossibleAt ?? '',
  ].join('|');
}

function readingOf(state: State, folded: FoldedText): Reading {
  const branches: Node[] = [];
  const choices: Node[] = [];
  const tries: Node[] = [];
  for (let ended = endLine(state); ended !== null; ended = ended.before) {
    (ended.kind === 'branch' ? branches : ended.kind === 'choice' ? choices : tries).push(ended.node);
  }
  const main = pathTo(state.main);
  const stop = state.stop;
  const lines = [state.main, ...branches, ...choices, ...tries].map(pathTo);
  const hasReply = state.badReply !== null || lines.some((line) => line.some(({ by }) => by === 'defender'));
  return {
    line: main.map((node) => moveOf(node, folded)),
    branches: longestOf(branches).map((node) => lineOf(node, folded)),
    choices: longestOf(choices).map((node) => lineOf(node, folded)),
    tries: longestOf(tries).map((node) => lineOf(node, folded)),
    impossibleAt: stop?.ply ?? null,
    impossibleSpan: stop === null ? null : placeOf(folded, stop.start, stop.end),
    isSolverOnly: !hasReply && !state.isGenerous && main.length > 1,
    isGenerous: state.isGenerous,
  };
}

/** In the order of the text, without those that another goes on from. */
function longestOf(nodes: readonly Node[]): Node[] {
  const inner = new Set<Node>();
  for (const node of nodes) {
    for (let at = node.parent; at !== null; at = at.parent) inner.add(at);
  }
  return [...new Set(nodes)].reverse().filter((node) => !inner.has(node));
}

function lineOf(node: Node, folded: FoldedText): ReadLine {
  return pathTo(node).map((at) => moveOf(at, folded));
}

function moveOf(node: Node, folded: FoldedText): ReadMove {
  const [start, end] = placeOf(folded, node.start, node.end);
  return { uci: node.uci, by: node.by, start, end, isTypo: node.isTypo };
}
