// Where things lie in a diagram: squares of 40 units, a margin for the coordinates. The board module
// lays its grid over the same figures, so that a tap meets the square that the eye sees.

import type { Square } from '#lib/rules/position.ts';

/** Side of a square in units of the drawing. */
export const SQUARE_UNITS = 40;

/** Left edge of the board with coordinates, its top edge, and the outer size of the drawing, in units. */
export interface DiagramFrame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The frame with coordinates outside (left and below), or close around the board. */
export function diagramFrame(hasCoordinates: boolean): DiagramFrame {
  return hasCoordinates
    ? { left: 19, top: 1.5, width: 341, height: 344 }
    : { left: 1.5, top: 1.5, width: 323, height: 323 };
}

/** Top left corner of a square, in units from the top left of the board. */
export function squareCorner(square: Square, isFlipped: boolean): readonly [number, number] {
  const file = square & 7;
  const rank = square >> 3;
  return isFlipped
    ? [(7 - file) * SQUARE_UNITS, rank * SQUARE_UNITS]
    : [file * SQUARE_UNITS, (7 - rank) * SQUARE_UNITS];
}
