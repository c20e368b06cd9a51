// Outcomes, flags and explanations of marks in English. Moves come in ready: "2 Qd6+", "2 … Nxd6".

export const markingEn = {
  'outcome-solved': 'Solved',
  'outcome-slower': 'Mates, but later',
  'outcome-unfinished': 'Right so far',
  'outcome-slipped': 'Slips at move {move, number}',
  'outcome-wrong': 'Wrong first move',
  'outcome-impossible': 'Not legal at move {move, number}',
  'outcome-ambiguous': 'Two readings',
  'outcome-unclear': 'Needs the host',
  'outcome-unreadable': 'Could not be read',
  'outcome-chatter': 'No answer',
  // Instead of "Right so far" where a move on the way was slower.
  'outcome-slower-not-shown': 'Mates later, not shown to the end',
  'why-solved': 'Right.',
  'why-slower':
    '{move} mates too, but against the best defence only on move {mateOn, number}; mate in {asked, number} was asked.',
  'why-slower-before': '{move} mates too, but only on move {mateOn, number}.',
  'why-unfinished': 'Right as far as it goes, but it stops too early.',
  'why-missing': '{missing, plural, one {One more move was} other {# more moves were}} needed.',
  'why-goes-on': 'It could have gone on {line}.',
  'why-slower-not-shown':
    '{move} mates too, but only on move {mateOn, number}, and your answer stops before it shows the mate.',
  'why-weak-defence': 'Right so far, but {reply} is not the best defence, so the rest does not count.',
  'why-weak-reply': '{reply} is not the best defence, so the rest does not count.',
  'why-better-defence': 'What if {reply}?',
  'why-slip-no-mate':
    '{left, plural, =0 {{move} is not mate: {side, select, w {White} other {Black}} has {reply}.} other {After {move} {side, select, w {White} other {Black}} plays {reply}, and }}{left, plural, =0 {} =1 {there is no mate next move.} =2 {there is no mate in two.} =3 {there is no mate in three.} =4 {there is no mate in four.} =5 {there is no mate in five.} other {there is no mate in #.}}',
  'why-slip-too-late': '{move} is not mate, and no move is left for it.',
  'why-slip-no-win':
    'After {move} {side, select, w {White} other {Black}} plays {reply}, and the win is gone.',
  'why-slip-no-draw':
    'After {move} {side, select, w {White} other {Black}} plays {reply}, and the draw is gone.',
  'why-slip-known': '{move} does not do it.',
  'why-slip-stalemate': '{move} is stalemate.',
  'why-slip-draw': 'After {move} the game is drawn.',
  'why-slip-repetition': 'After {move} the position stands for the third time: a draw.',
  'why-slip-mated': 'After {move} {side, select, w {White} other {Black}} plays {reply}, and that is mate.',
  'why-defence-line': 'For example {line}.',
  'why-defence-line-stalemate': 'For example {line}, stalemate.',
  'why-better-move': '{count, plural, one {{moves} was the move.} other {These moves were right: {moves}.}}',
  'why-worse-of-two': 'You give two moves for one and the same place in the line; the worse one counts.',
  'why-good-before': '{count, plural, one {Your first move is right.} other {Your first # moves are right.}}',
  'why-impossible': '“{text}” cannot be played at move {at, number}.',
  'why-impossible-no-text': 'What you wrote for move {at, number} cannot be played.',
  'why-unclear-verdict': 'The engine could not settle {move} within its budget; the host decides.',
  'why-not-verified': 'Part of this answer could not be verified; the host decides.',
  'why-too-many-fillings': 'Too many replies are left out to try them all; the host decides.',
  'why-two-readings': 'Your text can be read in two ways ({moves}), and they are not worth the same.',
  'why-two-readings-host':
    'Your text can be read in two ways ({moves}), and they are not worth the same; the host decides.',
  'why-unreadable': 'No move could be read at “{text}”.',
  'why-unreadable-no-text': 'No move could be read in your text.',
  'why-board-turned': 'This reads like moves on a board seen from the other side; the host decides.',
  'why-parked':
    'This answer could not be marked by the program; the host looks at it. Nothing of it is lost.',
  'why-chatter': 'Nothing in this text looks like a move.',
  'and-other-way': 'It is not the published way, but just as good.',
  'and-found-both': 'Both of the moves you give are right.',
  'and-generous': 'Where the text was not clear, it was read in your favour.',
  'and-typo': 'A slip of the pen was mended.',
  'and-past-the-end':
    'What you wrote after that does not work, but it was no longer needed and costs nothing.',
  'and-still-winning': 'You keep a winning position, but not the mate asked for.',
  'and-cut-by-source': 'The text was cut off where it came from; the host will look at it.',
  'and-benefit-of-doubt': 'A move that could not be settled counts as holding: benefit of the doubt.',
  // The how far sentence under the task (rule O1).
  'how-far-mate-now': 'The mating move is enough.',
  'how-far-first-move': 'The first move is enough.',
  'how-far-mate': 'To the mate; the last move may be left out.',
  'how-far-mate-written': 'To the mate, the mating move included.',
  'how-far-win': 'Go on until the win is clear to everyone.',
  'how-far-win-about':
    'Go on until the win is clear to everyone ({moves, plural, one {the first move may be enough} other {about # moves}}).',
  'how-far-draw': 'Go on until the draw is certain.',
  'how-far-draw-about':
    'Go on until the draw is certain ({moves, plural, one {the first move may be enough} other {about # moves}}).',
  'how-far-pinned': '{moves, plural, one {One good move is enough.} other {# good moves are enough.}}',
} as const;
