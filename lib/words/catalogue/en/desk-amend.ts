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
  'log-amendment-asked': 'Asked for a correction',
  'log-amendment-cancelled': 'Cancelled a correction',
  'log-amendment-verified': 'Verified a correction',
  'log-puzzle-amended': 'Put a correction in force',
  'wrong-bounds':
    'Bounds are whole hundredths of a pawn from {least, number} to {most, number}, and a move slips below where it holds.',
  'refused-no-amendment': 'There is no correction in the making; perhaps somebody else has decided it.',
  'refused-amendment-open':
    'A correction of this puzzle is in the making already. Put it in force or cancel it first.',
  'refused-nothing-changed':
    'Nothing is different: position, task, conditions and published solution are as they stand now.',
} as const;
