// SVG becomes PNG. No fonts of the machine are used, so that a picture is the same everywhere: text in an
// SVG must stand as outlines, or it is not drawn.

import { Resvg } from '@resvg/resvg-js';

/** The picture as PNG bytes, so many pixels wide; 10 to 60 ms for a diagram. */
export function rasterise(svg: string, { width }: { readonly width: number }): Uint8Array<ArrayBuffer> {
  const drawn = new Resvg(svg, { fitTo: { mode: 'width', value: width }, font: { loadSystemFonts: false } });
  return new Uint8Array(drawn.render().asPng());
}
