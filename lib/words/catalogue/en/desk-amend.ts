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
  'refused-close-unchanged': 'It closes at that time already.',
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
  amend: 'Correct the puzzle',
  'amend-open-link': 'A correction is in the making',
  'amend-intro':
    'A corrected puzzle keeps its address. What you write here is verified first; nobody sees anything of it until you put it in force. Then a notice stands on the public pages, and every answer is marked on what its sender saw; where that cannot be told, on whichever is kinder.',
  'amend-revealed':
    'The solution is out already: marks change only after you have looked at what would change.',
  'amend-cancelled-hint': 'The form is filled in with your last correction, which was cancelled.',
  'amend-ask': 'Verify the correction',
  'amend-bounds': 'Where a win or a draw holds and slips, in hundredths of a pawn',
  'amend-win-bound': 'A win holds from',
  'amend-slip-bound': 'A win slips at',
  'amend-draw-bound': 'A draw holds from',
  'amend-draw-slip-bound': 'A draw slips at',
  'amend-changes': 'What would change',
  'amend-now': 'As it stands',
  'amend-then': 'Corrected',
  'amend-position': 'Position',
  'amend-task': 'Task',
  'amend-conditions': 'Conditions',
  'amend-keys': 'Solution and bounds',
  'amend-title': 'Title',
  'amend-note': 'The notice will say',
  'amend-no-lines': 'no published line',
  'amend-bounds-are': 'win {win, number} and {slip, number}, draw {draw, number} and {drawSlip, number}',
  'amend-condition-mateWritten': 'the mating move must be written',
  'amend-condition-anyDefence': 'any defence may be answered',
  'amend-condition-isStrict': 'strict',
  'amend-condition-solverMoves':
    '{moves, plural, one {# good move finishes} other {# good moves finish}} an answer',
  'amend-condition-none': 'none',
  'amend-answers':
    '{count, plural, =0 {No answer has come yet.} one {One answer has come; it is marked again.} other {# answers have come; all of them are marked again.}}',
  'amend-put': 'Put the correction in force',
  'amend-put-hint':
    'From this moment on the public pages show the corrected puzzle and the notice. This cannot be taken back, only corrected again.',
  'amend-reason': 'Why put it in force all the same?',
  'amend-cancel': 'Cancel the correction',
  'amend-cancel-hint': 'The puzzle stays as it is. What you typed is offered again here.',
  'amend-failed':
    'Verification stopped: {failure}. The worker tries again by itself; you can cancel meanwhile.',
  'amend-claim-false':
    'The corrected claim is false, so it cannot be put in force. The report says what is true: cancel, and set that task instead.',
} as const;
