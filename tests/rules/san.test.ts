import { describe, expect, test } from 'vitest';
import { createRandom } from '#lib/kit/random.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { playMove } from '#lib/rules/play-move.ts';
import { parseSan, writeSan } from '#lib/rules/san.ts';
import { findUci, writeUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { otherBoard } from '../support/other-rules.ts';
import { accepted, positionOf, refused, START_FEN } from '../support/positions.ts';
import { readCaseLines } from '../support/read-cases.ts';

const write = (fen: string, uci: string): string => {
  const position = positionOf(fen);
  const move = findUci(position, uci);
  return move === null ? 'not legal' : writeSan(position, move);
};
const parse = (fen: string, text: string): string => writeUci(accepted(parseSan(positionOf(fen), text)));

describe('the export form (PGN standard 8.2.3)', () => {
  test.each([
    ['castling with the letter O', 'r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 0 1', 'e1c1', 'O-O-O'],
    ['castling with check', '5k2/8/8/8/8/8/8/4K2R w K - 0 1', 'e1g1', 'O-O+'],
    ['a pawn capture begins with its file', '4k3/8/8/3p4/4P3/8/8/4K3 w - - 0 1', 'e4d5', 'exd5'],
    ['nothing is added for en passant', '4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 2', 'e5d6', 'exd6'],
    ['promotion with the equals sign', '1n5k/P7/8/8/8/8/8/K7 w - - 0 1', 'a7b8q', 'axb8=Q+'],
    ['mate', '6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1', 'a1a8', 'Ra8#'],
    ['file first', '4k3/8/8/8/8/5N2/8/1N2K3 w - - 0 1', 'b1d2', 'Nbd2'],
    ['rank where the files are equal', '4k3/8/8/8/8/1N6/8/1N2K3 w - - 0 1', 'b1d2', 'N1d2'],
    ['file even where the rank would do', '4k3/8/8/R7/8/8/8/4K2R w - - 0 1', 'h1h5', 'Rhh5'],
    ['both, among three queens', '8/k7/8/8/4Q2Q/8/8/K6Q w - - 0 1', 'h4e1', 'Qh4e1'],
    ['a pinned rival needs no distinction', '4r2k/8/8/8/8/4N3/8/1N2K3 w - - 0 1', 'b1d2', 'Nd2'],
  ])('%s', (_what, fen, uci, san) => {
    expect(write(fen, uci)).toBe(san);
  });
});

describe('what is parsed', () => {
  const knights = '4k3/8/8/8/8/1N6/8/1N2K3 w - - 0 1';
  const castling = 'r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 0 1';
  const promotion = '1n5k/P7/8/8/8/8/8/K7 w - - 0 1';
  const passing = '4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 2';
  test.each([
    ['FIDE C.8: letter and arrival square', START_FEN, 'Nf3', 'g1f3'],
    ['FIDE C.8: the long form', START_FEN, 'Ng1-f3', 'g1f3'],
    ['FIDE C.8: the long form without hyphen', START_FEN, 'Ng1f3', 'g1f3'],
    ['FIDE C.8: a pawn in the long form', START_FEN, 'e2-e4', 'e2e4'],
    ['FIDE C.9: x left out', passing, 'ed6', 'e5d6'],
    ['FIDE C.9: en passant with its suffix', passing, 'exd6 e.p.', 'e5d6'],
    ['FIDE C.9: the suffix without stops', passing, 'exd6ep', 'e5d6'],
    ['FIDE C.10: the rank', knights, 'N1d2', 'b1d2'],
    ['PGN 8.2.3: surplus departure square', knights, 'Nb1d2', 'b1d2'],
    ['PGN 8.2.3: surplus file', START_FEN, 'Ngf3', 'g1f3'],
    ['FIDE C.11: promotion without sign', promotion, 'a8Q', 'a7a8q'],
    ['FIDE C.11: promotion in brackets', promotion, 'a8(N)', 'a7a8n'],
    ['PGN: promotion with sign', promotion, 'axb8=R+', 'a7b8r'],
    ['FIDE C.13: castling with figures', castling, '0-0', 'e1g1'],
    ['PGN: castling with letters', castling, 'O-O-O', 'e1c1'],
    ['small letters', castling, 'o-o-o', 'e1c1'],
    ['a missing check', '5k2/8/8/8/8/8/8/4K2R w K - 0 1', 'Rf1', 'h1f1'],
    ['a check that is none', START_FEN, 'e4+', 'e2e4'],
    ['FIDE C.13: mate as ++', '6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1', 'Ra8++', 'a1a8'],
    ['PGN 8.2.3.8: a suffix', START_FEN, 'e4!?', 'e2e4'],
    ['a move number', START_FEN, '1.e4', 'e2e4'],
    ['a move number with many dots', START_FEN, '1 ... e4', 'e2e4'],
    ['a number before castling with figures', castling, '1. 0-0', 'e1g1'],
    ['the bishop is a capital', '4k3/8/8/8/8/8/1P6/B3K3 w - - 0 1', 'b3', 'b2b3'],
  ])('%s', (_what, fen, text, uci) => {
    expect(parse(fen, text)).toBe(uci);
  });
});

describe('what is refused, with the reason', () => {
  test.each([
    ['no such move', START_FEN, 'Nf4', { code: 'not-legal', text: 'Nf4' }],
    [
      'two knights',
      '4k3/8/8/8/8/1N6/8/1N2K3 w - - 0 1',
      'Nd2',
      { code: 'ambiguous', text: 'Nd2', candidates: ['b1d2', 'b3d2'] },
    ],
    [
      'a promotion that names no man',
      '7k/P7/8/8/8/8/8/K7 w - - 0 1',
      'a8',
      { code: 'not-legal', text: 'a8' },
    ],
    [
      'a pawn capture without its file',
      '4k3/8/8/3p4/4P3/8/8/4K3 w - - 0 1',
      'd5',
      { code: 'not-legal', text: 'd5' },
    ],
    ['a small letter for a knight', START_FEN, 'nf3', { code: 'not-san', text: 'nf3' }],
    ['a letter of another language', START_FEN, 'Sf3', { code: 'not-san', text: 'Sf3' }],
    ['the null move', START_FEN, '--', { code: 'not-san', text: '--' }],
    ['mixed castling signs', 'r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 0 1', 'O-0', { code: 'not-san', text: 'O-0' }],
    ['nothing', START_FEN, '', { code: 'not-san', text: '' }],
    ['a long text, quoted cut short', START_FEN, 'e'.repeat(100), { code: 'not-san', text: 'e'.repeat(40) }],
  ])('%s', (_what, fen, text, reason) => {
    expect(refused(parseSan(positionOf(fen), text))).toEqual(reason);
  });
});

test('every legal move of the node count suite comes back from its notation', () => {
  for (const line of readCaseLines('perft.epd')) {
    const position = positionOf(line.split(' ;')[0] ?? '');
    for (const move of legalMoves(position)) {
      const san = writeSan(position, move);
      expect(accepted(parseSan(position, san)), `${san} in ${line}`).toEqual(move);
      expect(san).toMatch(/^.{2,7}$/);
    }
  }
});

test('the notation of 3,000 positions of random play is that of chess.js (seed 21)', () => {
  const random = createRandom(21);
  const starts = readCaseLines('perft.epd').map((line) => line.split(' ;')[0] ?? '');
  for (let positions = 0; positions < 3000; ) {
    let position = positionOf(random.pick(starts));
    for (let ply = 0; ply < 30; ply += 1) {
      const moves = legalMoves(position);
      const ours = moves.map((move) => writeSan(position, move)).sort();
      expect(ours).toEqual(otherBoard(writeFen(position)).moves().sort());
      positions += 1;
      if (moves.length === 0) break;
      position = playMove(position, random.pick(moves));
    }
  }
});
