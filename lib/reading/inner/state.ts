// One way to have read a text so far: the tree with its cursor, the language, and what it cost.

import type { Node } from './node.ts';

/** What the line is on which the cursor stands; `walk`: on moves already read, named once more. */
export type LineKind = 'main' | 'branch' | 'choice' | 'try' | 'walk';

/** A line that was left: its last node and what it is. */
export interface EndedLine {
  readonly node: Node;
  readonly kind: 'branch' | 'choice' | 'try';
  readonly before: EndedLine | null;
  readonly count: number;
}

/** Side lines kept of one reading; nobody writes so many. */
const MOST_LINES = 40;

/** What a closing bracket returns to. */
export interface SavedCursor {
  readonly node: Node;
  readonly kind: LineKind;
  readonly before: SavedCursor | null;
}

/** A move that cannot be played, with its ply. */
export interface Stop {
  readonly ply: number;
  readonly start: number;
  readonly end: number;
}

/** A partial reading. Never changed in place. */
export interface State {
  readonly cursor: Node;
  readonly kind: LineKind;
  /** Last node of the main line. */
  readonly main: Node;
  readonly ended: EndedLine | null;
  readonly saved: SavedCursor | null;
  /** True from an opening bracket to its first move. */
  readonly isFreshBracket: boolean;
  /** Languages that all letters so far allow; -1 all. */
  readonly langs: number;
  readonly cost: number;
  readonly isGenerous: boolean;
  /** Set once the main line has met a move that cannot be played. */
  readonly stop: Stop | null;
  /** A move that cannot be played stood at the cursor and was taken back. */
  readonly hasFailed: boolean;
  /** Rule R12: a reply that cannot be played, waiting for the solver's next move. */
  readonly badReply: Stop | null;
  /** Where the main line stood when a move in doubt was put aside; null where none was. */
  readonly doubtedAt: Node | null;
  /** Written number less the solver's move it stood at; null before the first number. */
  readonly numberOffset: number | null;
}

/** Nothing read yet. */
export function startAt(root: Node): State {
  return {
    cursor: root,
    kind: 'main',
    main: root,
    ended: null,
    saved: null,
    isFreshBracket: false,
    langs: -1,
    cost: 0,
    isGenerous: false,
    stop: null,
    hasFailed: false,
    badReply: null,
    doubtedAt: null,
    numberOffset: null,
  };
}

/** The list of ended lines with the line at the cursor added, where it is one of its own. */
export function endLine(state: State): EndedLine | null {
  const { kind, cursor, ended } = state;
  return kind === 'main' || kind === 'walk' ? ended : addLine(ended, cursor, kind);
}

/** The list with one more line; full lists stay as they are. */
export function addLine(before: EndedLine | null, node: Node, kind: EndedLine['kind']): EndedLine | null {
  const count = (before?.count ?? 0) + 1;
  return count > MOST_LINES ? before : { node, kind, before, count };
}
