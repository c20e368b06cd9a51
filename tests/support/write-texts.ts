// Texts as viewers send them, by seed: lines of the puzzle, right and wrong, in several notations.

import type { Random } from '#lib/kit/random.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { playMove } from '#lib/rules/play-move.ts';
import { writeSan } from '#lib/rules/san.ts';
import { writeUci } from '#lib/rules/uci.ts';

const LETTERS: readonly (readonly [string, string])[] = [
  ['NBRQK', 'NBRQK'],
  ['NBRQK', 'SLTDK'],
  ['NBRQK', 'CFTDR'],
  ['NBRQK', 'CATDR'],
  ['NBRQK', 'КСЛФК'],
  ['NBRQK', '♘♗♖♕♔'],
];
const CHATTER = ['first!', 'Greetings from the coast', 'what a show', 'too hard for me', 'no idea :('];
const FRAMES = [
  '{}',
  '{}!',
  'I think {}',
  '{} and it is over',
  '1) {}',
  '{} ?',
  'sorry, {}',
  '{} wins',
  '({})',
];

function inLetters(san: string, [from, to]: readonly [string, string]): string {
  return [...san].map((sign) => [...to][from.indexOf(sign)] ?? sign).join('');
}

/** So many texts; `good` are lines worth favouring, as UCI. */
export function writeTexts(random: Random, fen: string, count: number, good: readonly string[][]): string[] {
  return Array.from({ length: count }, () => writeText(random, fen, good));
}

function writeText(random: Random, fen: string, good: readonly string[][]): string {
  if (random.next() < 0.05) return random.pick(CHATTER);
  const parsed = parseFen(fen);
  if (!parsed.ok) throw new Error(fen);
  let position = parsed.value;
  const letters = random.pick(LETTERS);
  const isUci = random.next() < 0.1;
  const isBare = random.next() < 0.3;
  const leavesRepliesOut = random.next() < 0.15;
  const guide = random.next() < 0.6 ? random.pick(good) : [];
  const words: string[] = [];
  const plies = 1 + random.int(5);
  for (let ply = 0; ply < plies; ply += 1) {
    const moves = legalMoves(position);
    if (moves.length === 0) break;
    const guided = moves.find((move) => writeUci(move) === guide[ply]);
    const move = guided ?? random.pick(moves);
    const san = writeSan(position, move);
    const plain = isBare ? san.replace(/[+#x=]/g, '') : san;
    if (ply % 2 === 0 || !leavesRepliesOut) {
      if (ply % 2 === 0 && random.next() < 0.4) words.push(`${ply / 2 + 1}.`);
      words.push(isUci ? writeUci(move) : inLetters(plain, letters));
    }
    position = playMove(position, move);
  }
  if (random.next() < 0.03) words.push('Qz9');
  return random.pick(FRAMES).replace('{}', words.join(' '));
}
