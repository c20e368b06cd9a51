// Takes the outlines of the six men and of the sixteen coordinates out of the installed font
// packages, so that a diagram needs no font anywhere: page, picture, card and print draw the same.

import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { create, type Font, type PathCommand } from 'fontkit';
import { buildOnce } from './inner/build-stamp.ts';

const OUTPUT = 'lib/pictures/inner/men-outlines.ts';
const SYMBOLS = '@fontsource/noto-sans-symbols-2/files/noto-sans-symbols-2-symbols-400-normal.woff2';
const TEXT = '@fontsource-variable/literata/files/literata-latin-wght-normal.woff2';

// U+265A to U+265F, drawn into a square of 40 units: centred, standing on a line 5.6 units above its foot.
const MEN = { k: 0x265a, q: 0x265b, r: 0x265c, b: 0x265d, n: 0x265e, p: 0x265f } as const;
const SQUARE = 40;
const MAN_SCALE = 0.0412;
const MAN_BASE = 34.4;
const FIGURE_SIZE = 11;
/** Points lie on a raster of a tenth of a unit: a third of a pixel on a diagram 1,000 wide. */
const RASTER = 10;

/** Writes the outlines module into the pictures room; false where it was already up to date. */
export function buildMen(root: string): Promise<boolean> {
  const files = ['lib/start/build-men.ts'];
  return buildOnce({ root, name: 'men', files, outputs: [OUTPUT], salt: versions(root) }, () => {
    const symbols = openFont(root, SYMBOLS);
    const men = Object.entries(MEN).map(([kind, code]) => {
      const glyph = symbols.glyphForCodePoint(code);
      if (glyph.id === 0) throw new Error(`The font has no U+${code.toString(16)}`);
      const left = SQUARE / 2 - (glyph.advanceWidth * MAN_SCALE) / 2;
      return `  ${kind}: '${svgPath(glyph.path.commands, { scale: MAN_SCALE, left, base: MAN_BASE })}',`;
    });
    const text = openFont(root, TEXT);
    const scale = FIGURE_SIZE / text.unitsPerEm;
    const figures = [...'abcdefgh12345678'].map((sign) => {
      const glyph = text.glyphForCodePoint(sign.codePointAt(0) ?? 0);
      const left = (-glyph.advanceWidth * scale) / 2;
      return `  '${sign}': '${svgPath(glyph.path.commands, { scale, left, base: 0 })}',`;
    });
    mkdirSync(join(root, dirname(OUTPUT)), { recursive: true });
    writeFileSync(join(root, OUTPUT), moduleText(men, figures));
  });
}

function openFont(root: string, file: string): Font {
  const opened = create(readFileSync(createRequire(join(root, 'package.json')).resolve(file)));
  if (!('glyphForCodePoint' in opened)) throw new Error(`${file} is not a single font`);
  return opened;
}

function versions(root: string): string {
  const find = createRequire(join(root, 'package.json'));
  const hash = createHash('sha256');
  for (const file of [SYMBOLS, TEXT]) hash.update(readFileSync(find.resolve(file)));
  return hash.digest('hex');
}

const LETTERS: Readonly<Record<string, string>> = {
  moveTo: 'm',
  lineTo: 'l',
  quadraticCurveTo: 'q',
  bezierCurveTo: 'c',
  closePath: 'z',
};

interface Place {
  readonly scale: number;
  readonly left: number;
  readonly base: number;
}

// Relative steps between points rounded on the same raster: half the length, and no drift.
function svgPath(commands: readonly PathCommand[], { scale, left, base }: Place): string {
  let from = [0, 0];
  let start = [0, 0];
  let path = '';
  for (const { command, args } of commands) {
    const points = args.map((n, i) =>
      Math.round((i % 2 === 0 ? left + n * scale : base - n * scale) * RASTER),
    );
    const steps = points.map((n, i) => short(n - (from[i % 2] ?? 0)));
    path += (LETTERS[command] ?? '') + steps.join(' ').replaceAll(' -', '-');
    if (points.length > 0) from = points.slice(-2);
    if (command === 'moveTo') start = from;
    if (command === 'closePath') from = start;
  }
  return path;
}

function short(n: number): string {
  return String(n / RASTER).replace(/^(-?)0\./, '$1.');
}

function moduleText(men: readonly string[], figures: readonly string[]): string {
  return [
    '// Made by lib/start/build-men.ts from the installed fonts (SIL Open Font License 1.1); not kept in the repository.',
    '',
    '/** Outlines of the men in a square of 40 units. */',
    'export const MEN_OUTLINES = {',
    ...men,
    '} as const;',
    '',
    '/** Outlines of the coordinates, centred on their base line. */',
    'export const FIGURE_OUTLINES: Readonly<Record<string, string>> = {',
    ...figures,
    '};',
    '',
  ].join('\n');
}
