// Sentences of the soundness report in English. Moves come in ready.

export const bookEn = {
  'claim-true-mate': 'True: mate in {moves, number} can be forced.',
  'claim-true-win': 'True: the win is there.',
  'claim-true-draw': 'True: the draw is there.',
  'claim-shorter': 'There is something quicker: mate in {moves, number}.',
  'claim-false-mate': 'False: no first move forces mate in {moves, number}.',
  'claim-false-win': 'False: no first move reaches the win bound.',
  'claim-false-draw': 'False: no first move holds the draw.',
  'claim-true-task': 'It is a mate in {moves, number}.',
  'claim-unclear': 'Not settled within the budget: {moves}. No other first move holds.',
  'claim-some-unclear': 'Not settled within the budget: {moves}.',
  'claim-needs-end':
    'The result is plain in the diagram already, so that nothing says where an answer is complete: publish a line or pin the number of moves.',
  'keys-unique': 'One first move holds: {move}.',
  'keys-many': '{count, plural, one {One first move holds} other {# first moves hold}}: {moves}.',
  'move-mate': '{move} (mate in {moves, number})',
  'move-value': '{move} ({value})',
  'and-more': '{moves} and {more, number} more',
  slower: '{count, plural, one {One first move mates} other {# first moves mate}} one move later: {moves}.',
  dual: 'After {line}, not only {published} works but also {others}.',
  'dual-at-start': 'Not only {published} works but also {others}.',
  try: '{move} fails to {line}.',
  'try-ends': '{move} fails: it ends the game.',
  'values-row': 'From the best on: {row}. Holds from {hold}, slips up to {slip}.',
  'values-many': '{count, number} first moves hold: more than most viewers will expect.',
  'values-propose': 'A bound of {bound} would lie in the widest gap.',
  'values-simpler': 'Simpler than yours: {moves} wins plainly at once; expect most people to give it.',
  checks:
    '{passed, number} of {checkable, number} verdicts that can be replayed were replayed and found right.',
  'checks-too-large': '{count, plural, one {One was} other {# were}} too large to replay.',
  'checks-failed':
    '{count, plural, one {One check failed} other {# checks failed}}: the verdicts are set to unclear. Please report this.',
  'checks-none': 'Values of a search and results of tables cannot be replayed ({count, number} verdicts).',
  'opinion-named': 'The program that you named (“{name}”)',
  'opinion-nameless': 'The program that you named',
  'opinion-mate':
    '{who} would play {move} (mate in {moves, number}{depth, plural, =-1 {} other {, depth #}}).',
  'opinion-mated':
    '{who} would play {move} (and be mated in {moves, number}{depth, plural, =-1 {} other {, depth #}}).',
  'opinion-value': '{who} would play {move} ({value}{depth, plural, =-1 {} other {, depth #}}).',
  'opinion-move': '{who} would play {move} and gives no value{depth, plural, =-1 {} other { (depth #)}}.',
  'opinion-beside': 'It stands beside the verdicts and changes none.',
  'opinion-cannot-start': 'It gave no usable answer: it could not be started.',
  'opinion-no-answer': 'It gave no usable answer: it took too long.',
  'opinion-ended': 'It gave no usable answer: it ended before it had answered.',
  'opinion-too-much-output': 'It gave no usable answer: it would not stop talking.',
  'opinion-illegal-move': 'It gave no usable answer: the move that it named is not legal here.',
  'opinion-illegal-line': 'It gave no usable answer: the line that it expects is not legal here.',
  'opinion-set-aside':
    'It was not asked: it had failed three times in a row and is set aside until Tailpiece is started again.',
} as const;
