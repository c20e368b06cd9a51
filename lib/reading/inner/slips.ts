// Rule R13: which move is meant by a token with one typing slip, where exactly one legal move is? A sign too
// many, two signs that changed places, or a goal that is no square; never another square where one is written,
// never another man (rule R6).

import type { Uci } from '#lib/rules/move.ts';
import type { Shape } from '../shape.ts';
import type { MoveItem } from './items.ts';
import { rarityOf } from './letters.ts';
import { type Budget, landings, type Node } from './node.ts';
import { type ScanContext, type Step, scanCompact } from './scan-compact.ts';
import { scanTail } from './scan-tail.ts';
import { isCapital } from './signs.ts';

/** Longest token that is mended. */
const LONGEST = 12;

/** One step that holds the shapes of the one legal move within one slip; null where there is none or a choice. */
export function mendedShapes(
  text: string,
  item: MoveItem,
  at: { readonly node: Node; readonly langs: number; readonly context: ScanContext; readonly budget: Budget },
): Step | null {
  const { node, langs, context, budget } = at;
  const written = text.slice(item.start, item.end).replace(/[+#!?]+$/, '');
  if (written.length < 3 || written.length > LONGEST || item.isPhrase) return null;
  let found = new Map<string, readonly Shape[]>();
  let usual = 9;
  // A goal that is no square names no other square either: there the file may be mended.
  const completions = completionsOf(written);
  const isCompleted = completions.length > 0;
  for (const mended of isCompleted ? completions : mendings(written)) {
    budget.left -= 4;
    const shapes = shapesOf(mended, context);
    if (shapes === null) continue;
    for (const landing of landings(node, shapes, budget)) {
      const both = langs & landing.match.langs;
      if (landing.match.cost > 4 || both === 0) continue;
      // A slip is mended in the most usual language only: "Ngg5" is no Romanian bishop.
      const rarity = both === -1 ? 0 : rarityOf(both);
      if (rarity < usual) found = new Map();
      if (rarity <= usual) found.set(landing.uci, shapes);
      usual = Math.min(usual, rarity);
    }
  }
  if (found.size !== 1) return null;
  for (const [uci, shapes] of found) {
    if (isCompleted || names(written, uci)) return { shapes, start: item.start, end: item.end };
  }
  return null;
}

/** The goal stands in what was written, its two signs in either order: another square is never read into it. */
function names(written: string, uci: Uci): boolean {
  const plain = written.replace(/[^\p{L}\d]|[xX]/gu, '');
  const [file = '', rank = ''] = uci.slice(2, 4);
  // "dR8" has its man between file and rank.
  return [plain.toLowerCase(), plain.replace(/\p{Lu}/gu, '')].some(
    (signs) => signs.includes(file + rank) || signs.includes(rank + file),
  );
}

/** "cxv7", "Qj4": the goal with each file in the place of a letter that is none; empty where the goal is a square. */
function completionsOf(written: string): string[] {
  // "xh7": the man who takes is the sign left out.
  if (/^x[a-h][1-8]$/.test(written)) return [...'KQRBNabcdefgh'].map((man) => man + written);
  const match = /^(.*[KQRBNx].*|[KQRBNx])([i-wyz])([1-8])$/.exec(written);
  if (match === null) return [];
  const [, before = '', , rank = ''] = match;
  return [...'abcdefgh'].map((file) => `${before}${file}${rank}`);
}

/** Every string that one slip turned into the written one. */
function mendings(written: string): Set<string> {
  const all = new Set<string>();
  for (let at = 0; at < written.length; at += 1) {
    const without = written.slice(0, at) + written.slice(at + 1);
    // The capital in front is a man, if perhaps an unknown one: it is a sign too many only where it is doubled.
    if (at > 0 || !isCapital(written.charAt(0)) || written.charAt(0) === written.charAt(1)) all.add(without);
    if (at + 1 < written.length) {
      all.add(written.slice(0, at) + written.charAt(at + 1) + written.charAt(at) + written.slice(at + 2));
    }
  }
  all.delete(written);
  return all;
}

function shapesOf(text: string, context: ScanContext): readonly Shape[] | null {
  const scan = scanCompact(text, 0, context);
  if (scan === null || scan.strength === 'files') return null;
  const tail = scanTail(text, scan.end, scan.canPromote);
  if (tail.end !== text.length) return null;
  const way = scan.ways[0];
  if (way === undefined || way.length !== 1) return null;
  const shapes = way[0]?.shapes ?? [];
  const [promotion] = tail.promotions;
  return promotion === undefined ? shapes : shapes.map((shape) => ({ ...shape, promotion: promotion.kind }));
}
