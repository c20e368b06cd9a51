import { describe, expect, test } from 'vitest';
import { rasterise } from '#lib/machine/rasterise.ts';
import { drawDiagram } from '#lib/pictures/draw-diagram.ts';
import { positionOf } from '../support/positions.ts';

// W. Healey, Bristol 1861: mate in three. Men on both colours of square.
const HEALEY = '8/1n3Np1/1N4Q1/1bkP4/p1p2p2/P1P2R2/3P2PK/B2R4 w - - 0 1';
const position = positionOf(HEALEY);

describe('drawDiagram', () => {
  test('draws every man once, and only outlines that are used', () => {
    const svg = drawDiagram({ position, title: 'Healey' });
    expect(svg.match(/<use /g)).toHaveLength(19);
    expect(svg).toContain('id="d-q"');
    expect(drawDiagram({ position: positionOf('4k3/8/8/8/8/8/8/4K3 w - - 0 1'), title: '' })).not.toContain(
      'id="d-q"',
    );
    expect(
      drawDiagram({ position: positionOf('4k3/8/8/8/8/8/8/4K3 w - - 0 1'), title: '', allMen: true }),
    ).toContain('id="d-q"');
  });

  test('names itself by title and list of men, with ids of its own', () => {
    const svg = drawDiagram({ position, title: 'Mate in three', description: 'White: king h2.', id: 'x' });
    expect(svg).toContain('aria-labelledby="x-title x-men"');
    expect(svg).toContain('<title id="x-title">Mate in three</title>');
    expect(svg).toContain('<desc id="x-men">White: king h2.</desc>');
  });

  test('a title cannot carry markup, control characters or half a character', () => {
    const svg = drawDiagram({ position, title: '<script>"&\u0000\ud800' });
    expect(svg).toContain('&lt;script&gt;&quot;&amp;');
    expect(svg).not.toContain('<script');
    expect(svg).not.toContain('\u0000');
    expect(svg).not.toContain('\ud800');
  });

  test('carries no style that a strict policy would refuse, and no font', () => {
    const svg = drawDiagram({ position, title: 'x', arrow: [3, 7] });
    expect(svg).not.toMatch(/style=|<style|<text|font-/);
  });

  test('the board turned shows every man in the opposite corner', () => {
    const lone = positionOf('7k/8/8/8/8/8/8/K7 w - - 0 1');
    expect(drawDiagram({ position: lone, title: '' })).toMatch(/#d-k" x="0" y="280"/);
    expect(drawDiagram({ position: lone, title: '', flipped: true })).toMatch(/#d-k" x="280" y="0"/);
  });

  test('a1 is a dark square, h1 a light one: ink lands where the hatch is', () => {
    const dark = /<path d="(M[^"]+z)" fill="#e6dfce"/.exec(drawDiagram({ position, title: '' }))?.[1] ?? '';
    expect(dark.split('M').slice(1)).toHaveLength(32);
    expect(dark).toContain('M0 280h40');
    expect(dark).not.toContain('M280 280h40');
  });
});

/** Width and height of a PNG from its header chunk. */
function pngSize(png: Uint8Array): [number, number] {
  const view = new DataView(png.buffer, png.byteOffset);
  return [view.getUint32(16), view.getUint32(20)];
}

describe('the diagram as PNG', () => {
  test('is as wide as asked and keeps its proportion', () => {
    expect(pngSize(rasterise(drawDiagram({ position, title: '' }), { width: 682 }))).toEqual([682, 688]);
  });

  test('men and coordinates put ink on the picture: without them it is smaller', () => {
    const full = rasterise(drawDiagram({ position, title: '' }), { width: 400 });
    const empty = rasterise(
      drawDiagram({ position: { ...position, board: new Uint8Array(64) }, title: '' }),
      {
        width: 400,
      },
    );
    const bare = rasterise(
      drawDiagram({ position: { ...position, board: new Uint8Array(64) }, title: '', coordinates: false }),
      { width: 400 },
    );
    expect(full.byteLength).toBeGreaterThan(empty.byteLength * 1.05);
    expect(empty.byteLength).toBeGreaterThan(bare.byteLength);
  });

  test('the same diagram gives the same bytes', () => {
    const svg = drawDiagram({ position, title: '' });
    expect(rasterise(svg, { width: 300 })).toEqual(rasterise(svg, { width: 300 }));
  });
});
