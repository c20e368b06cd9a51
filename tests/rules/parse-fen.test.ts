import { describe, expect, test } from 'vitest';
import { type FenReason, parseFen } from '#lib/rules/parse-fen.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { accepted, refused, START_FEN } from '../support/positions.ts';

describe('what is taken', () => {
  test.each([
    ['the start position', START_FEN, START_FEN],
    ['white space around and between', `  ${START_FEN.replaceAll(' ', '\t ')} \n`, START_FEN],
    ['four fields, as in EPD', '8/8/8/8/8/4k3/8/4K2R w K -', '8/8/8/8/8/4k3/8/4K2R w K - 0 1'],
    ['empty squares counted in pieces', '44/8/8/8/8/4k3/8/4K11R w K - 0 1', '8/8/8/8/8/4k3/8/4K2R w K - 0 1'],
    [
      'an en passant square without a capturer',
      '4k3/8/8/8/4P3/8/8/4K3 b - e3 0 1',
      '4k3/8/8/8/4P3/8/8/4K3 b - e3 0 1',
    ],
    ['high clocks', '4k3/8/8/8/8/8/8/4K2R w - - 99 320', '4k3/8/8/8/8/8/8/4K2R w - - 99 320'],
  ])('%s', (_what, text, written) => {
    expect(writeFen(accepted(parseFen(text)))).toBe(written);
  });
});

describe('what is refused, with the field and the text that is wrong', () => {
  const men = 'rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR';
  const field = (name: string, found: string, rank: number | null = null) =>
    ({ code: 'field', field: name, found, rank }) as FenReason;
  const cases: [string, string, FenReason][] = [
    ['nothing', '', { code: 'field-count', found: 0 }],
    ['the men alone', men, { code: 'field-count', found: 1 }],
    ['five fields', `${men} w KQkq - 0`, { code: 'field-count', found: 5 }],
    ['a seventh field', `${START_FEN} x`, { code: 'field-count', found: 7 }],
    ['seven ranks', '8/8/8/8/8/8/8 w - - 0 1', field('men', '8/8/8/8/8/8/8')],
    ['a short rank', `${men.replace('pppppppp', 'ppppppp')} w KQkq - 0 1`, field('men', 'ppppppp', 7)],
    ['a long rank', `${men.replace('pppppppp', 'ppppppp2')} w KQkq - 0 1`, field('men', 'ppppppp2', 7)],
    ['a ninth man', `${men.replace('pppppppp', 'ppppppppp')} w KQkq - 0 1`, field('men', 'ppppppppp', 7)],
    [
      'a letter of another language',
      `${men.replace('PPPPPPPP', 'PPPPDPPP')} w KQkq - 0 1`,
      field('men', 'PPPPDPPP', 2),
    ],
    ['a dot', `${men.replace('pppppppp', 'pppp.ppp')} w KQkq - 0 1`, field('men', 'pppp.ppp', 7)],
    ['a nine', `${men.replace('8', '9')} w KQkq - 0 1`, field('men', '9', 6)],
    ['another side to move', `${men} W KQkq - 0 1`, field('turn', 'W')],
    ['rights in another order', `${men} w QKkq - 0 1`, field('castling', 'QKkq')],
    ['rights twice', `${men} w KKkq - 0 1`, field('castling', 'KKkq')],
    ['no square', `${men} w KQkq e9 0 1`, field('en-passant', 'e9')],
    ['a negative clock', `${men} w KQkq - -1 1`, field('halfmove-clock', '-1')],
    ['move number nought', `${men} w KQkq - 0 0`, field('fullmove-number', '0')],
    ['a fraction', `${men} w KQkq - 0 1.5`, field('fullmove-number', '1.5')],
    [
      'a position that cannot be',
      '8/8/8/8/8/8/8/4K3 w - - 0 1',
      { code: 'position', position: { code: 'kings', side: 'b', count: 0 } },
    ],
  ];
  test.each(cases)('%s', (_what, text, reason) => {
    expect(refused(parseFen(text))).toEqual(reason);
  });

  test('a text of any length is answered at once, and quoted cut short', () => {
    const long = 'x'.repeat(5_000_000);
    expect(refused(parseFen(long))).toEqual({ code: 'field-count', found: 1 });
    const reason = refused(parseFen(`${'p'.repeat(90)} w - - 0 1`));
    expect(reason).toEqual(field('men', 'p'.repeat(40)));
  });
});
