// The thin arrow of the last move: from the edge of the man to just short of the middle of its new square.

import type { Square } from '#lib/rules/position.ts';
import { SQUARE_UNITS, squareCorner } from './diagram-frame.ts';

/** Path of the arrow in board units: a shaft and an open head. */
export function arrowPath(from: Square, to: Square, flipped: boolean): string {
  const [fromX, fromY] = squareCorner(from, flipped);
  const [toX, toY] = squareCorner(to, flipped);
  const half = SQUARE_UNITS / 2;
  const length = Math.hypot(toX - fromX, toY - fromY) || 1;
  const [dx, dy] = [(toX - fromX) / length, (toY - fromY) / length];
  const at = (along: number, aside: number): string =>
    `${round(fromX + half + dx * along - dy * aside)} ${round(fromY + half + dy * along + dx * aside)}`;
  const tip = length - 13;
  return `M${at(13, 0)}L${at(tip, 0)}M${at(tip - 8, -5)}L${at(tip, 0)}L${at(tip - 8, 5)}`;
}

function round(n: number): number {
  return Math.round(n * 10) / 10;
}
