// The little of fontkit that the build step uses; the package brings no types.
declare module 'fontkit' {
  export interface PathCommand {
    readonly command: string;
    readonly args: readonly number[];
  }
  export interface Glyph {
    readonly id: number;
    readonly advanceWidth: number;
    readonly path: { readonly commands: readonly PathCommand[] };
  }
  export interface Font {
    readonly unitsPerEm: number;
    glyphForCodePoint(code: number): Glyph;
  }
  export function create(bytes: Uint8Array): Font | { readonly fonts: readonly Font[] };
}
