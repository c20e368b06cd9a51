import { describe, expect, it } from 'vitest';
import { say } from '#lib/words/format.ts';

describe('say', () => {
  it('fills numbers and plurals by the rules of the language', () => {
    expect(say('en', 'marking.outcome-slipped', { move: 2 })).toBe('Slips at move 2');
    expect(say('de', 'marking.outcome-slipped', { move: 2 })).toBe('Fehler im 2. Zug');
    expect(say('en', 'moves.takes', { man: 'bishop', square: 'f7' })).toBe('bishop takes f7');
  });

  it('refuses to leave a hole in a sentence', () => {
    expect(() => say('en', 'marking.outcome-slipped')).toThrow(/move/);
  });
});
