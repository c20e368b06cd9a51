// Of several moves offered for one place the writer picks one ("Ke6 or Ke7? I'd go Ke6"), or turns one of them
// down later ("torn between Nf3+ and Qxe4+. Nf3+ fails"): rules R3, R10, O4.

import { COST } from './costs.ts';
import type { MoveItem } from './items.ts';
import { childTowards, type Node } from './node.ts';
import type { Plan } from './plans.ts';
import { addLine, type EndedLine, endLine, type State } from './state.ts';

/** A move already read, and what naming it again does to the lines. */
export interface Settled {
  readonly child: Node;
  readonly plan: Plan;
}

/** Null where the token does not name one of several offered moves again, or says nothing of them. */
export function settle(state: State, item: MoveItem, node: Node, uci: string): Settled | null {
  const isTurnedDown = item.rejected === 2 || item.isStruck;
  if (!isTurnedDown && !isPicked(state, item, node)) return null;
  const offered = linesAt(state, node);
  const named = offered.find((tip) => childTowards(node, tip)?.uci === uci);
  const child = named === undefined ? null : childTowards(node, named);
  const others = offered.filter((tip) => tip !== named && childTowards(node, tip)?.uci !== uci);
  const [other] = others;
  if (named === undefined || child === null || other === undefined) return null;
  if (!isTurnedDown) {
    const main = named;
    const kind = child === main ? 'main' : 'walk';
    const ended = withTries(state, others, main);
    return { child, plan: { state: { ...state, ended, main, cursor: child, kind }, liberty: COST.mention } };
  }
  const main = named === state.main ? other : state.main;
  const ended = withTries(state, [named], main);
  return {
    child,
    plan: { state: { ...state, ended, main, cursor: child, kind: 'try' }, liberty: COST.mention },
  };
}

/** "I'd go Ke6", or the first number of the text before a move of the start. */
function isPicked({ numberOffset }: State, { cues, number, dots }: MoveItem, node: Node): boolean {
  return (
    cues.has('verdict') || (number !== null && numberOffset === null && dots < 2 && node.parent === null)
  );
}

/** The last nodes of the main line and of all choices that part at the node. */
function linesAt(state: State, node: Node): Node[] {
  const tips: Node[] = [];
  const add = (tip: Node): void => {
    if (childTowards(node, tip)?.by === 'solver' && !tips.includes(tip)) tips.push(tip);
  };
  add(state.main);
  for (let line = endLine(state); line !== null; line = line.before)
    if (line.kind === 'choice') add(line.node);
  return tips;
}

/** The ended lines without the new main line, and with those turned down as tries. */
function withTries(state: State, down: readonly Node[], main: Node): EndedLine | null {
  const lines: EndedLine[] = [];
  for (let line = endLine(state); line !== null; line = line.before) lines.unshift(line);
  let ended: EndedLine | null = null;
  for (const { node, kind } of lines) {
    if (node === main && kind === 'choice') continue;
    ended = addLine(ended, node, down.includes(node) ? 'try' : kind);
  }
  return down.includes(state.main) ? addLine(ended, state.main, 'try') : ended;
}
