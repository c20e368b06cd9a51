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
    '{passed, number} of {checkable, number} verdicts that can be replayed were replayed by the independent checker.',
  'checks-too-large': '{count, plural, one {One was} other {# were}} too large to replay.',
  'checks-failed':
    '{count, plural, one {One check failed} other {# checks failed}}: the verdicts are set to unclear. Please report this.',
  'checks-none': 'Values of a search and results of tables cannot be replayed ({count, number} verdicts).',
} as const;
