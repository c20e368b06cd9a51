// Every way in which a move could give itself away in a page, a picture or a script.

import { playMove } from '#lib/rules/play-move.ts';
import { type Kind, type Position, squareName } from '#lib/rules/position.ts';
import { writeSan } from '#lib/rules/san.ts';
import { findUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';

// Letters of knight, bishop, rook, queen, king in some languages, then figurines of both colours.
const LETTERS: readonly Readonly<Record<Exclude<Kind, 'p'>, string>>[] = [
  { n: 'N', b: 'B', r: 'R', q: 'Q', k: 'K' },
  { n: 'S', b: 'L', r: 'T', q: 'D', k: 'K' },
  { n: 'C', b: 'F', r: 'T', q: 'D', k: 'R' },
  { n: 'C', b: 'A', r: 'T', q: 'D', k: 'R' },
  { n: 'К', b: 'С', r: 'Л', q: 'Ф', k: 'Кр' },
  { n: '♘', b: '♗', r: '♖', q: '♕', k: '♔' },
  { n: '♞', b: '♝', r: '♜', q: '♛', k: '♚' },
];
const NAMES: readonly Readonly<Record<Kind, string>>[] = [
  { p: 'pawn', n: 'knight', b: 'bishop', r: 'rook', q: 'queen', k: 'king' },
  { p: 'Bauer', n: 'Springer', b: 'Läufer', r: 'Turm', q: 'Dame', k: 'König' },
];

/** The forms of a move by a man (not a pawn): short, long, UCI, in other letters, in words, the position after it, and base64 of each. */
export function moveForms(position: Position, uci: string): string[] {
  const move = findUci(position, uci);
  if (move === null || move.kind === 'p') throw new Error(`${uci} is no move of a man here`);
  const { kind } = move;
  const [from, to] = [squareName(move.from), squareName(move.to)];
  const bare = writeSan(position, move).replace(/[+#]$/, '').slice(1);
  const forms = [
    uci,
    `${from}${to}`,
    `${from}-${to}`,
    `${from}–${to}`,
    `${from}x${to}`,
    `${from}×${to}`,
    `${from} ${to}`,
  ];
  for (const letters of LETTERS) {
    const letter = letters[kind];
    forms.push(letter + bare, `${letter}${from}-${to}`, `${letter}${from}–${to}`, `${letter}${to}`);
  }
  for (const names of NAMES)
    forms.push(`${names[kind]} to ${to}`, `${names[kind]} nach ${to}`, `${names[kind]} ${to}`);
  const after = writeFen(playMove(position, move));
  forms.push(after.split(' ')[0] ?? after, after.split(' ').slice(0, 4).join(' '));
  const whole = [...new Set(forms)];
  // Base64 of a short text stands in a longer one only by chance of place; five signs and more are telling.
  return [
    ...whole,
    ...whole
      .filter((form) => form.length > 4)
      .map((form) => Buffer.from(form).toString('base64').replace(/=+$/, '')),
  ];
}

/** Which of the forms stand in a text, whatever its case of prose words. */
export function formsIn(text: string, forms: readonly string[]): string[] {
  return forms.filter((form) => text.includes(form));
}

/** What a PNG says in words: its text chunks, decoded as Latin-1 and UTF-8; `IDAT` and the like are pixels. */
export function pngWords(png: Uint8Array): string {
  const view = new DataView(png.buffer, png.byteOffset, png.byteLength);
  let words = '';
  for (let at = 8; at + 12 <= png.byteLength; ) {
    const length = view.getUint32(at);
    const type = Buffer.from(png.subarray(at + 4, at + 8)).toString('latin1');
    if (!['IHDR', 'PLTE', 'IDAT', 'IEND', 'tRNS'].includes(type)) {
      const chunk = Buffer.from(png.subarray(at + 8, at + 8 + length));
      words += `${type} ${chunk.toString('latin1')} ${chunk.toString('utf8')}\n`;
    }
    at += length + 12;
  }
  return words;
}
