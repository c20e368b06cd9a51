import { describe, expect, it } from 'vitest';
import { type Labelled, outcomeLabel } from '#lib/words/outcome-label.ts';

describe('outcomeLabel', () => {
  it.each<[Labelled, string, string]>([
    [{ outcome: 'solved', atMove: null }, 'Solved', 'Gelöst'],
    [{ outcome: 'slower', atMove: null }, 'Mates, but later', 'Matt, aber später'],
    [{ outcome: 'unfinished', atMove: null }, 'Right so far', 'Bis hierher richtig'],
    [
      { outcome: 'unfinished', atMove: null, isSlowerNotShown: true },
      'Mates later, not shown to the end',
      'Matt später, nicht bis zum Ende gezeigt',
    ],
    [{ outcome: 'slipped', atMove: 2 }, 'Slips at move 2', 'Fehler im 2. Zug'],
    [{ outcome: 'wrong', atMove: 1 }, 'Wrong first move', 'Falscher erster Zug'],
    [{ outcome: 'impossible', atMove: 3 }, 'Not legal at move 3', 'Im 3. Zug nicht regelgemäß'],
    [{ outcome: 'unreadable', atMove: null }, 'Could not be read', 'Nicht lesbar'],
  ])('[O0] of %j is the label that people see', (labelled, english, german) => {
    expect(outcomeLabel(labelled, 'en')).toBe(english);
    expect(outcomeLabel(labelled, 'de')).toBe(german);
  });
});
