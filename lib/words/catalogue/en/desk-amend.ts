// Sentences of the desk about corrections of a published puzzle, in English.

export const deskAmendEn = {
  'move-close': 'Move the close',
  'move-close-now': 'Move it',
  'move-close-hint':
    'Which answers are in time is decided anew for all of them. Where the public knew the former close, a notice stands on the puzzle page.',
  'move-close-done': 'The close is moved.',
  'new-close': 'New close',
  'correction-note': 'A word to the viewers (may be left empty)',
  'correction-note-needed': 'A word to the viewers',
  'correction-note-hint':
    'It stands in the correction notice, at once and for everybody. Do not give the solution away.',
  'refused-note-empty': 'Viewers are told what was wrong: write a sentence for the correction notice.',
  'refused-note-too-long':
    'The note has {length, number} characters; {most, number} are the most that fit the notice.',
} as const;
