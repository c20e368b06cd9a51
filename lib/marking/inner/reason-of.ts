// Why did a line earn what it earned? The data of the explanation.

import type { BookRow } from '#lib/book/book-row.ts';
import { countRepetitions, movesTo, type TreeNode } from '#lib/book/position-tree.ts';
import type { Uci } from '#lib/rules/move.ts';
import type { Reason, SlowerBefore } from '../reasons.ts';
import { continuationOf } from './continuation.ts';
import type { Judged } from './judge-reading.ts';
import type { Walk } from './walk.ts';
import { movesLeftAt, type PuzzleFacts } from './walk-context.ts';

const MOST_BETTER = 3;
const MOST_REFUTATION = 5;
const MOST_QUOTED = 40;
const HALF_SIGN_AT_END = /[\ud800-\udbff]$/;

/** The reason of a line that was taken. `text` is what the viewer wrote. */
export function reasonOf(facts: PuzzleFacts, judged: Judged, text: string): Reason {
  const { walk, outcome } = judged;
  switch (outcome) {
    case 'solved':
      return { code: 'solved', params: {} };
    case 'slower':
      return {
        code: 'slower',
        params: { at: walk.slowerAt ?? 1, mateOn: mateOn(facts), asked: asked(facts) },
      };
    case 'unfinished':
      return unfinished(facts, judged);
    case 'slipped':
    case 'wrong':
      return slip(facts, judged);
    case 'impossible':
      return {
        code: 'impossible',
        params: { text: quote(text, spanOf(judged)), ...slowerBefore(facts, judged) },
      };
    default:
      return { code: unclearCode(judged), params: {} };
  }
}

/** A stretch of the viewer's text, cut short; empty where there is none. */
export function quote(text: string, span: readonly [number, number] | null): string {
  if (span === null) return '';
  // Never half a sign at the end.
  return text.slice(span[0], span[1]).slice(0, MOST_QUOTED).replace(HALF_SIGN_AT_END, '').trim();
}

function unclearCode({ walk }: Judged): 'unclear-verdict' | 'not-verified' | 'too-many-fillings' {
  return walk.because === 'not-verified' || walk.because === 'too-many-fillings'
    ? walk.because
    : 'unclear-verdict';
}

// A slower move mates on move N + 1, by its definition (rule V1).
function mateOn(facts: PuzzleFacts): number {
  return asked(facts) + 1;
}

function asked({ terms }: PuzzleFacts): number {
  return terms.task.kind === 'mate' ? terms.task.moves : 0;
}

function unfinished(facts: PuzzleFacts, { walk, p, r }: Judged): Reason {
  const weakAt = walk.because === 'weak-defence' ? walk.verdicts.length : null;
  if (walk.slowerAt !== null) {
    const better = weakAt === null ? [] : betterReplies(facts, walk);
    return { code: 'slower-not-shown', params: { at: walk.slowerAt, mateOn: mateOn(facts), weakAt, better } };
  }
  if (weakAt !== null)
    return { code: 'weak-defence', params: { at: weakAt, better: betterReplies(facts, walk) } };
  // Where the line has outlasted the number that is known, one more is only what r has to be at least.
  const isKnown = facts.needed(walk.verdicts[0] ?? null, movesTo(walk.node)) > p;
  return {
    code: 'unfinished',
    params: { missing: isKnown ? r - p : 0, rest: continuationOf(facts, walk, r - p) },
  };
}

function slowerBefore(facts: PuzzleFacts, { walk }: Judged): SlowerBefore {
  return { slowerAt: walk.slowerAt, mateOn: mateOn(facts) };
}

function betterReplies({ published }: PuzzleFacts, { node, row }: Walk): Uci[] {
  const known = node.parent === null ? null : published.movesAt(node.parent.key);
  return [...new Set([...(known ?? []), ...(row?.adequate ?? [])])].slice(0, MOST_BETTER);
}

function slip(facts: PuzzleFacts, judged: Judged): Reason {
  const { walk } = judged;
  const { node } = walk;
  // A reply may have ended the game: the move before it is the one that let it happen.
  const after = walk.because === 'drawn-by-reply' ? (node.parent ?? node) : node;
  const before = after.parent;
  if (before === null) throw new Error('a slip without a move');
  const movesLeft = movesLeftAt(facts.terms, before);
  return {
    code: 'slip',
    params: {
      how: howItSlips(facts, walk.because === 'drawn-by-reply' ? node : after),
      movesLeft: movesLeft === null ? null : movesLeft - 1,
      by: walk.because === 'drawn-by-reply' && node.move !== null ? [node.move] : defenceOf(walk.row),
      better: holdingMoves(facts, before, movesLeft).filter((move) => move !== after.move),
      ...slowerBefore(facts, judged),
    },
  };
}

function howItSlips(
  { terms }: PuzzleFacts,
  after: TreeNode,
): 'no-mate' | 'no-win' | 'no-draw' | 'stalemate' | 'draw' | 'repetition' {
  if (after.end === 'stalemate') return 'stalemate';
  if (after.end !== null) return 'draw';
  if (terms.task.kind === 'win' && countRepetitions(after) >= 3) return 'repetition';
  return terms.task.kind === 'mate' ? 'no-mate' : terms.task.kind === 'win' ? 'no-win' : 'no-draw';
}

function defenceOf(row: BookRow | null): readonly Uci[] {
  switch (row?.evidence.kind) {
    case 'refutation': {
      const { line, reply } = row.evidence;
      return line.length > 0 || reply === null ? line.slice(0, MOST_REFUTATION) : [reply];
    }
    case 'search':
    case 'table':
      return row.evidence.line.slice(0, MOST_REFUTATION);
    default:
      return [];
  }
}

function holdingMoves({ book }: PuzzleFacts, before: TreeNode, movesLeft: number | null): Uci[] {
  return book
    .rowsAt(before.bookPosition, movesLeft)
    .filter(({ verdict }) => verdict === 'holds')
    .sort(
      (a, b) =>
        (a.mateIn ?? 0) - (b.mateIn ?? 0) || (b.value ?? 0) - (a.value ?? 0) || (a.move < b.move ? -1 : 1),
    )
    .slice(0, MOST_BETTER)
    .map(({ move }) => move);
}

// What the viewer wrote where it goes wrong: the span that the reader noted, or the move that a filling excludes.
function spanOf({ reading, line, walk }: Judged): readonly [number, number] | null {
  const written = line.line[walk.used];
  return written === undefined ? reading.impossibleSpan : [written.start, written.end];
}
