import { expect, test } from 'vitest';
import { describePosition } from '#lib/pictures/describe-position.ts';
import { positionOf } from '../support/positions.ts';

const POSITION = positionOf('8/8/8/1bk5/p7/8/3P2PK/R2R4 b - - 0 1');

test('the text alternative lists the men of both sides by kind, and who moves', () => {
  expect(describePosition(POSITION, 'en')).toBe(
    'White: king h2; rooks a1, d1; pawns d2, g2. Black: king c5; bishop b5; pawn a4. Black to move.',
  );
});

test('the same in German', () => {
  expect(describePosition(POSITION, 'de')).toBe(
    'Weiß: König h2; Türme a1, d1; Bauern d2, g2. Schwarz: König c5; Läufer b5; Bauer a4. Schwarz am Zug.',
  );
});
