// Sentences about marking everybody again, and about other ways that viewers found, for the desk in English.

const MARKS = '{marks, plural, one {One mark} other {# marks}}';

export const deskRegradeEn = {
  'log-regrade-asked': 'Asked to have answers marked again',
  'log-regrade-agreed': 'Said yes to a regrade',
  'log-regrade-cancelled': 'Dropped a regrade',
  'log-regrade-applied': 'Marks changed by a regrade',
  'regrade-title': 'Mark everybody again',
  'regrade-intro':
    'Every answer is marked again on what is known now. You see first what would change; until you say yes, nothing does.',
  'regrade-intro-hidden':
    'Nothing is public yet, so the marks are simply renewed. After the reveal you would see first what changes.',
  'regrade-intro-none': 'No answer is marked yet; there is nothing to mark again.',
  'regrade-not-published': 'Before it is published nobody can have answered it.',
  'regrade-void': 'A void puzzle gives no points; its marks are not changed any more.',
  'regrade-owner': 'The owner of the show decides on this.',
  'regrade-why': 'Why?',
  'regrade-why-hint': 'Kept with the regrade, for you and your helpers.',
  'regrade-ask': 'Mark everybody again',
  'regrade-asked-now': '{answers, plural, one {One answer is} other {# answers are}} being marked again.',
  'regrade-asked-first': 'Being worked out. Nothing changes before you have seen it.',
  'regrade-because': 'Reason: {reason}',
  'regrade-by-program':
    'These answers were to be marked again before the reveal and came to their turn after it.',
  'regrade-marking': 'Marking again, to see what would change.',
  'regrade-book': 'The solution book is asked for moves that it does not know yet.',
  'regrade-writing': 'Being written. All marks change at the same moment.',
  'regrade-parts': '{done} of {total} answers.',
  'regrade-unknown': 'How many answers there are is not counted yet.',
  'regrade-writing-hint': 'A reader sees the old marks or the new ones, never some of each.',
  'regrade-progress-label': 'Answers marked again',
  'regrade-what': 'What would change',
  'regrade-nothing':
    'No outcome and no points would change. Writing it down only renews the explanations and the versions that the marks name.',
  'regrade-renewed':
    'Something has changed since you said yes: nothing was written. This is what would change now.',
  'regrade-rise': `${MARKS} would rise, by {points, plural, one {one point} other {# points}} in all.`,
  'regrade-fall': `${MARKS} would fall, by {points, plural, one {one point} other {# points}} in all.`,
  'regrade-same':
    '{same, plural, =0 {Every mark changes.} one {One mark stays as it is.} other {# marks stay as they are.}}',
  'regrade-unjudged':
    '{count, plural, one {One answer} other {# answers}} could not be judged; the worker’s log says why. The marks stay.',
  'regrade-asked': 'Need your word one by one',
  'regrade-asked-hint':
    'Tick what shall take force. What you leave unticked keeps its mark; the next regrade proposes it again.',
  'regrade-asked-more':
    '{count, plural, one {One more is} other {# more are}} not listed; they keep their marks until the next regrade.',
  'regrade-others': 'Change along with the whole',
  'regrade-others-more': '{count, plural, one {One more is} other {# more are}} not listed and go along.',
  'regrade-overruled': 'Stand under your word',
  'regrade-overruled-hint':
    'You overruled these. They stay as you left them; what the program finds now is kept beside.',
  'regrade-head-yes': 'Yes',
  'regrade-head-who': 'Who',
  'regrade-head-change': 'From and to',
  'regrade-head-points': 'Points',
  'regrade-yes-to': '{name}: {from} becomes {to}, {points} points',
  'regrade-becomes': 'becomes',
  'regrade-share': '{label}, {p, number} of {r, number}',
  'regrade-word-would-fall': 'falls',
  'regrade-word-would-count': 'would count instead of a better answer',
  'regrade-word-read-out': 'the name was read out',
  'regrade-apply': 'Write it down',
  'regrade-apply-hint': 'The rises take force, and the changes that you ticked.',
  'regrade-cancel': 'Drop it',
  'regrade-agreed-done': 'Said. The marks change in a moment, all at once.',
  'regrade-dropped': 'Dropped. Every mark stays as it was.',
  'regrade-earlier': 'Earlier ones',
  'regrade-applied': '{marks, plural, =0 {no mark written} one {one mark written} other {# marks written}}',
  'regrade-cancelled': 'dropped',
  'regrade-refused-reason-empty': 'Say why; a word is enough.',
  'regrade-refused-unknown-regrade': 'There is no such regrade.',
  'regrade-refused-not-previewed': 'It has been decided or begun anew meanwhile. This is how it stands now.',
  'regrade-refused-preview-changed': 'What would change is not what you were shown. Look at it again.',
  'regrade-refused-not-in-preview': 'Answer {answer, number} is not among those that need your word.',
  'regrade-waits': 'A regrade waits for your word: what was settled after the reveal changes nothing before.',
  'regrade-in-list': 'a regrade waits for you',
  'regrade-runs': 'A regrade is being worked out.',
  'regrade-look': 'See what would change',
  'regrade-link': 'Mark everybody again',
  'ways-title': 'Another way was found',
  'ways-other':
    '{count, plural, one {A viewer} other {# viewers}} found another way: {move} {task, select, mate {mates in time as well} draw {also holds the draw} other {also wins}}.',
  'ways-shorter':
    '{count, plural, one {A viewer} other {# viewers}} found a shorter way: {move} mates in {moves, number}.',
  'ways-ruled': 'You ruled that it holds.',
  'ways-who': 'Found by {names}{more, plural, =0 {} other { and # more}}.',
  'ways-right': 'It counts as right for everybody who gave it.',
  'ways-offer':
    'The book did not know this when the puzzle was published. Marking everybody again makes sure that all are measured by what is known now.',
  'ways-done': 'Everybody was marked again since.',
} as const;
