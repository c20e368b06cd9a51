// Draws on the SVG that the page brought: men, crop marks, arrow. Attributes only, no styles.

import { arrowPath } from '#lib/pictures/arrow-path.ts';
import { diagramFrame, squareCorner } from '#lib/pictures/diagram-frame.ts';
import { kindOf, type Position, type Square, sideOf } from '#lib/rules/position.ts';

const SVG = 'http://www.w3.org/2000/svg';

/** What a board drawing can be told. */
export interface BoardDrawing {
  showMen(position: Position, isFlipped: boolean): void;
  showMarks(chosen: Square | null, targets: readonly Square[]): void;
  showArrow(move: { readonly from: Square; readonly to: Square } | null): void;
  turnFigures(): void;
  /** Moves the man of a square by so many units of the drawing; 0, 0 puts it back. */
  shiftMan(square: Square, byX: number, byY: number): void;
}

/** Takes over a diagram made by `drawDiagram` with `allMen`; null where the SVG is not one. */
export function takeOverDiagram(svg: SVGSVGElement): BoardDrawing | null {
  const white = svg.querySelector('.d-white');
  const black = svg.querySelector('.d-black');
  const board = svg.querySelector('.d-men')?.parentElement;
  const id = svg.querySelector('pattern')?.id.replace(/-hatch$/, '');
  if (!white || !black || !board || id === undefined) return null;
  const groups = { w: white, b: black };
  const marks = board.insertBefore(element('path', { class: 'd-mark' }), svg.querySelector('.d-men'));
  let arrow = svg.querySelector('.d-arrow');
  let men = new Map<Square, SVGElement>();
  let flipped = false;

  return {
    showMen(position, isFlipped) {
      flipped = isFlipped;
      men = new Map();
      white.replaceChildren();
      black.replaceChildren();
      for (let square = 0; square < 64; square += 1) {
        const man = position.board[square] ?? 0;
        const side = sideOf(man);
        if (side === null) continue;
        const [x, y] = squareCorner(square, flipped);
        const use = element('use', { href: `#${id}-${kindOf(man)}`, x: String(x), y: String(y) });
        groups[side].append(use);
        men.set(square, use);
      }
    },
    showMarks(chosen, targets) {
      const path =
        (chosen === null ? '' : cropMarks(chosen, flipped)) + targets.map((s) => angle(s, flipped)).join('');
      marks.setAttribute('d', path);
    },
    showArrow(move) {
      arrow?.remove();
      if (move === null) return;
      arrow = element('path', { class: 'd-arrow', d: arrowPath(move.from, move.to, flipped) });
      for (const [name, value] of [
        ['fill', 'none'],
        ['stroke-width', '1.6'],
        ['stroke-linecap', 'round'],
        ['stroke-linejoin', 'round'],
      ] as const) {
        arrow.setAttribute(name, value);
      }
      board.append(arrow);
    },
    turnFigures() {
      const figures = svg.querySelector('.d-figures');
      if (figures === null) return;
      // Files and ranks alternate in the drawing; each row is turned within itself.
      const paths = [...figures.children];
      for (const parity of [0, 1]) {
        const row = paths.filter((_, i) => i % 2 === parity);
        const outlines = row.map((path) => path.getAttribute('d') ?? '').reverse();
        row.forEach((path, i) => {
          path.setAttribute('d', outlines[i] ?? '');
        });
      }
    },
    shiftMan(square, byX, byY) {
      const man = men.get(square);
      if (byX === 0 && byY === 0) man?.removeAttribute('transform');
      else man?.setAttribute('transform', `translate(${byX.toFixed(1)} ${byY.toFixed(1)})`);
    },
  };
}

function element(name: string, attributes: Readonly<Record<string, string>>): SVGElement {
  const made = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  return made;
}

/** Four corner angles around a square, as a printer marks where to cut. */
function cropMarks(square: Square, flipped: boolean): string {
  const [x, y] = squareCorner(square, flipped);
  const [l, t, r, b] = [x + 4, y + 4, x + 36, y + 36];
  return `M${l} ${t + 9}V${t}H${l + 9}M${r - 9} ${t}H${r}V${t + 9}M${r} ${b - 9}V${b}H${r - 9}M${l + 9} ${b}H${l}V${b - 9}`;
}

/** One angle, at the lower left of a square that can be reached. */
function angle(square: Square, flipped: boolean): string {
  const [x, y] = squareCorner(square, flipped);
  return `M${x + 2} ${y + 29}V${y + 38}H${x + 11}`;
}

/** Units of the drawing for one pixel of a board that is so many pixels wide. */
export function unitsPerPixel(svg: SVGSVGElement): number {
  return diagramFrame(true).width / (svg.getBoundingClientRect().width || 1);
}
