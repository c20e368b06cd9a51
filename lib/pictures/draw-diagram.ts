// Draws a position as books print it: pale squares, hatched dark squares, men as outlines with a
// thin contour of the other colour. One renderer for page, picture, card and print.

import { KINDS, kindOf, type Position, type Square, sideOf } from '#lib/rules/position.ts';
import { arrowPath } from './arrow-path.ts';
import { diagramFrame, SQUARE_UNITS, squareCorner } from './diagram-frame.ts';
import { DIAGRAM_INKS, type DiagramInks } from './inner/inks.ts';
import { FIGURE_OUTLINES, MEN_OUTLINES } from './inner/men-outlines.ts';
import { escapeXml } from './inner/svg-text.ts';

/** How a diagram is drawn. Everything but the position and the title may be left out. */
export interface DiagramInput {
  readonly position: Position;
  /** What the diagram is, for readers who hear it: "White to play and mate in three". */
  readonly title: string;
  /** The men in words (`describePosition`); left out, the title stands alone. */
  readonly description?: string;
  /** Width in pixels; without it the drawing takes the width it is given. */
  readonly size?: number;
  /** The last move, as a thin arrow. */
  readonly arrow?: readonly [Square, Square];
  readonly coordinates?: boolean;
  readonly flipped?: boolean;
  readonly theme?: 'paper' | 'ink' | 'clear';
  /** Begins every id in the drawing; needed where one page holds several diagrams. */
  readonly id?: string;
  /** Keeps the outlines of all six men at hand, for a board whose men change. */
  readonly allMen?: boolean;
}

/**
 * The diagram as SVG text, 3 to 12 kB. Colours stand as presentation attributes, so that a picture needs
 * no style sheet; the class names let a page's style sheet turn it into ink paper.
 */
export function drawDiagram(input: DiagramInput): string {
  const id = input.id ?? 'd';
  const frame = diagramFrame(input.coordinates ?? true);
  const inks = DIAGRAM_INKS[input.theme ?? 'paper'];
  const flipped = input.flipped ?? false;
  const width = input.size === undefined ? '' : ` width="${input.size}"`;
  const height =
    input.size === undefined ? '' : ` height="${Math.round((input.size * frame.height) / frame.width)}"`;
  const names = input.description === undefined ? `${id}-title` : `${id}-title ${id}-men`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" class="diagram" viewBox="0 0 ${frame.width} ${frame.height}"${width}${height} role="img" aria-labelledby="${names}">`,
    `<title id="${id}-title">${escapeXml(input.title)}</title>`,
    input.description === undefined ? '' : `<desc id="${id}-men">${escapeXml(input.description)}</desc>`,
    definitions(input, id, inks),
    inks.ground === null ? '' : `<rect width="100%" height="100%" fill="${inks.ground}" class="d-ground"/>`,
    `<g transform="translate(${frame.left} ${frame.top})">`,
    squares(id, inks),
    men(input.position, { id, flipped, inks }),
    input.arrow === undefined ? '' : arrow(input.arrow, flipped, inks),
    (input.coordinates ?? true) ? coordinates(flipped, inks) : '',
    '</g></svg>',
  ].join('');
}

function definitions(input: DiagramInput, id: string, inks: DiagramInks): string {
  const used = new Set([...input.position.board].map(kindOf));
  const outlines = KINDS.filter((kind) => input.allMen || used.has(kind)).map(
    (kind) => `<path id="${id}-${kind}" d="${MEN_OUTLINES[kind]}"/>`,
  );
  // The pattern is turned, not drawn slanted: only so do the strokes meet across tiles and squares.
  return `<defs><pattern id="${id}-hatch" width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M2 0V4" stroke="${inks.hatch}" stroke-width="1.1" class="d-hatch"/></pattern>${outlines.join('')}</defs>`;
}

function squares(id: string, inks: DiagramInks): string {
  const side = 8 * SQUARE_UNITS;
  let dark = '';
  for (let rank = 0; rank < 8; rank += 1) {
    // One path for all dark squares: every second square of a row, beginning one further in each other row.
    const first = rank % 2 === 0 ? 1 : 0;
    for (let file = first; file < 8; file += 2) dark += `M${file * 40} ${rank * 40}h40v40h-40z`;
  }
  return [
    `<rect width="${side}" height="${side}" fill="${inks.light}" class="d-light"/>`,
    `<path d="${dark}" fill="${inks.dark}" class="d-dark"/>`,
    `<path d="${dark}" fill="url(#${id}-hatch)"/>`,
    `<rect x="-.8" y="-.8" width="${side + 1.6}" height="${side + 1.6}" fill="none" stroke="${inks.line}" stroke-width="1.6" class="d-line"/>`,
  ].join('');
}

function men(position: Position, with_: { id: string; flipped: boolean; inks: DiagramInks }): string {
  const { id, flipped, inks } = with_;
  const groups = { w: '', b: '' };
  for (let square = 0; square < 64; square += 1) {
    const man = position.board[square] ?? 0;
    const side = sideOf(man);
    if (side === null) continue;
    const [x, y] = squareCorner(square, flipped);
    groups[side] += `<use href="#${id}-${kindOf(man)}" x="${x}" y="${y}"/>`;
  }
  const common = 'paint-order="stroke" stroke-linejoin="round"';
  return [
    `<g class="d-men"><g class="d-white" fill="${inks.whiteMan}" stroke="${inks.blackMan}" stroke-width="1.7" ${common}>${groups.w}</g>`,
    `<g class="d-black" fill="${inks.blackMan}" stroke="${inks.whiteMan}" stroke-width=".9" ${common}>${groups.b}</g></g>`,
  ].join('');
}

function arrow([from, to]: readonly [Square, Square], flipped: boolean, inks: DiagramInks): string {
  return `<path class="d-arrow" d="${arrowPath(from, to, flipped)}" fill="none" stroke="${inks.red}" stroke-width="1.6" stroke-linecap="round" stroke-linejoin="round"/>`;
}

function coordinates(flipped: boolean, inks: DiagramInks): string {
  let paths = '';
  for (let i = 0; i < 8; i += 1) {
    const file = String.fromCharCode(97 + (flipped ? 7 - i : i));
    const rank = String(flipped ? i + 1 : 8 - i);
    paths += `<path transform="translate(${i * 40 + 20} 335)" d="${FIGURE_OUTLINES[file] ?? ''}"/>`;
    paths += `<path transform="translate(-10.5 ${i * 40 + 24})" d="${FIGURE_OUTLINES[rank] ?? ''}"/>`;
  }
  return `<g class="d-figures" fill="${inks.line}">${paths}</g>`;
}
