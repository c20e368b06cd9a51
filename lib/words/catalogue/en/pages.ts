// Sentences of the public pages in English.

import { correctionsEn } from './corrections.ts';

const MOVES_IN_WORDS =
  '{moves, plural, =1 {one} =2 {two} =3 {three} =4 {four} =5 {five} =6 {six} =7 {seven} =8 {eight} other {{moves, number}}}';
const SIDE = '{side, select, white {White} other {Black}}';

export const pagesEn = {
  // Frame
  'own-name': 'English',
  skip: 'To the page',
  'link-puzzles': 'Puzzles',
  'link-standings': 'Standings',
  'link-rules': 'How answers are marked',
  number: 'No. {number, number}',

  // Puzzle page
  'task-mate': `${SIDE} to play and mate in ${MOVES_IN_WORDS}`,
  'task-win': `${SIDE} to play and win`,
  'task-draw': `${SIDE} to play and draw`,
  closes: 'Closes',
  'closed-at': 'Closed',
  'own-time': '({time} your time)',
  'left-seconds': 'under a minute left',
  'left-minutes': '{count, plural, one {# minute} other {# minutes}} left',
  'left-hours': '{count, plural, one {# hour} other {# hours}} left',
  'left-days': '{count, plural, one {# day} other {# days}} left',
  'your-line': 'Your line, in any notation or language',
  'read-back': 'Read it back to me',
  'answer-hint':
    'No account. Tap the men, or type: {short}, {other}, “{spoken}”. Nobody sees answers or marks before the reveal.',
  'scheme-full-line':
    'Up to {solved, plural, one {# point} other {# points}} for the whole line, part of them for part of it.',
  'scheme-key-move':
    'Marked by the first move alone: {solved, plural, one {# point} other {# points}} if it is right.',
  'scheme-first-move':
    '{solved, plural, one {# point} other {# points}} for the right move, {slower, number} for one that mates a move later.',
  'any-defence': 'Any defence may be answered.',
  'waits-for-reveal': 'Answers are closed. The solution follows at the reveal.',
  'see-solution': 'See the solution',
  void: 'This puzzle was taken out of the count. No points are given, no run is broken; thank you for solving.',

  // Front page
  'front-title': 'Puzzles',
  'front-open': 'Open now',
  'front-none-open': 'No puzzle is open at the moment.',
  'front-past': 'Before',
  'front-empty': 'The first puzzle has not been set yet.',
  'state-closed': 'closed, waits for the reveal',
  'state-revealed': 'solution',
  'state-void': 'void',
  'front-answer': 'Answer this one',
  'no-name': 'no name',

  // Standings
  'standings-empty': 'Nothing has been revealed yet; the standings begin with the first reveal.',
  'standings-count': '{count, plural, one {# person} other {# people}}',
  'standings-rank': 'Rank',
  'standings-shared': 'shared',
  'standings-name': 'Name',
  'standings-solved': 'Solved',
  'standings-points': 'Points',
  'standings-next': 'Further down',
  'standings-others': 'Seasons and episodes',

  // Check page
  'check-title': 'Is this your line?',
  'check-title-several': 'Which line do you mean?',
  'check-title-none': 'No line could be read',
  'check-title-turned': 'Is your board turned round?',
  'check-none':
    'Nothing in your text is a legal move here. Change it, or send it as it is: a person will look at it.',
  'check-chatter': 'There is no move in this text. Write the line you would play.',
  'check-turned':
    'As written no move is legal. Seen from the other side it would be the line below; the host decides about such texts.',
  'check-impossible': '“{move}” cannot be played there; the reading ends before it.',
  'check-impossible-first':
    '“{move}” cannot be played in this position. Change the text, or send it as it is.',
  'check-first-unread': 'The first thing that looks like a move is “{move}”.',
  'check-cut': 'Your text was cut at 4,000 characters.',
  'check-solver-only': 'You gave no replies; that is fine. The gaps stay open.',
  'check-several': 'Your text fits more than one line. Say which one, or leave it open.',
  'check-leave-open': 'Leave it open',
  'check-branches': 'Also read:',
  'check-choices': 'Offered instead:',
  'check-tries': 'Turned down by you:',
  'check-text': 'Your text',
  'check-elsewhere': 'Read as an answer to “{title}” it would be a full line.',
  'check-elsewhere-link': 'Go to that puzzle',
  'check-change': 'Change the text',
  name: 'Your name, if it may be read out',
  'name-hint': 'May stay empty. Up to 40 characters; shown on the roll of solvers after the reveal.',
  send: 'Send it',
  'check-nothing-stored': 'Nothing has been stored yet.',
  gap: 'reply not given',
  'diagram-after': 'The position after {move}',
  'diagram-start': 'The position of the puzzle',

  // Receipt
  receipt: 'Your answer',
  revealed: 'revealed',
  'receipt-title': 'Your answer is in',
  'receipt-received': 'Received',
  'receipt-in-time': 'In time.',
  'receipt-late': 'It came after the close: it is kept, but does not count.',
  'receipt-replaced': 'You have sent a later answer to this puzzle; that one counts.',
  'receipt-reply': 'It reads as a reply to somebody else and does not count.',
  'receipt-waits': 'Nobody sees it, and nothing is said about right or wrong, before the reveal.',
  'receipt-not-marked': 'It has not been marked yet. Look again in a moment.',
  'receipt-text': 'As you sent it',
  'receipt-name': 'Name:',
  'receipt-read': 'As it was read',
  'receipt-unread': 'No legal move was read. A person will look at it.',
  'receipt-impossible': '“{move}” cannot be played in this position, so there is no line to show.',
  'receipt-left-open': 'It fits several lines; you left it open.',
  'receipt-several': 'It fits several lines; the one you chose is marked.',
  'receipt-meant': 'this one',
  'receipt-link': 'Your receipt link',
  'receipt-link-hint':
    'Keep it: it opens this page again, and whoever has it can change or withdraw the answer.',
  'receipt-change': 'Change the answer',
  'receipt-withdraw': 'Withdraw the answer',
  'receipt-withdraw-hint': 'Name and text are erased, here and in the standings. This cannot be undone.',
  'receipt-withdraw-now': 'Withdraw it now',
  'receipt-withdrawn-title': 'Withdrawn',
  'receipt-withdrawn': 'Name and text of this answer are erased. Only that there was one is kept.',
  look: 'Second look',
  'look-ask': 'Ask for a second look',
  'look-hint':
    'A person looks at your mark again, once. Say in up to 500 characters what was misread or misjudged; you may leave it empty.',
  'look-words': 'What should be looked at?',
  'look-send': 'Ask for it',
  'look-asked': 'You asked for a second look:',
  'look-waits': 'It waits for the host. What the host says will stand here.',
  'look-stands': 'Looked at again: the mark stands.',
  'look-changed': 'Looked at again: the mark was changed. What you see above is the new one.',
  'look-reply': 'The host says',
  'look-settled': 'Settled:',
  'refused-look-before-reveal': 'A second look can be asked for after the reveal.',
  'refused-look-not-marked': 'This answer has not been marked yet. Look again in a moment.',
  'refused-look-asked-already':
    'A second look was asked for already; there is one for each answer. What was sent now was not kept.',
  'refused-look-withdrawn': 'The answer was withdrawn; there is nothing left to look at.',
  'refused-look-not-text':
    'The field "words" has to be text of at most {most, number} characters. Nothing was kept.',
  'refused-look-too-long':
    'This has {length, number} characters; at most {most, number} are taken. Shorten it and send it again.',
  'to-puzzle': 'To the puzzle',
  'play-through': 'Play it through',
  'points-of': '{points, plural, one {# point} other {# points}} of {most, number}.',
  'host-decided': 'The host decided this. The program had said: {outcome}.',
  ledger: 'Every move with its verdict',
  'ledger-filled': 'not written; taken in your favour',
  'ledger-not-verified': 'not verified',
  'ledger-mate': 'mate',
  'ledger-holds': 'holds',
  'ledger-holds-mate':
    'holds; mate in {moves, plural, =1 {one} =2 {two} =3 {three} =4 {four} =5 {five} other {#}} follows',
  'ledger-slower': 'slower',
  'ledger-slower-mate':
    'slower; mate in {moves, plural, =1 {one} =2 {two} =3 {three} =4 {four} =5 {five} other {#}} follows',
  'ledger-slips': 'slips',
  'ledger-unclear': 'unclear',
  'ledger-benefit': 'counts as holding: benefit of the doubt',

  // Solution
  solution: 'Solution',
  'diagram-in-line': 'A position of the solution',
  'to-start': 'Back to the diagram',
  'other-ways': 'Other ways',
  or: 'or',
  'why-not': 'Why not?',
  'why-not-pick': 'Tap any move on the board, or pick one here',
  'why-holds': '{move} is right: it {task, select, draw {holds the draw} other {wins}}.',
  'why-holds-mate':
    '{move} is right: mate in {moves, plural, =1 {one} =2 {two} =3 {three} =4 {four} =5 {five} other {#}}.',
  'why-slower': '{move} mates as well, but only in {moves, plural, one {# move} other {# moves}}.',
  'why-slips':
    '{move} fails to {reply}; after that {task, select, mate {there is no mate in the moves left} win {the win is gone} other {the draw is gone}}.',
  'why-slips-at-once': '{move} ends the matter at once: stalemate, or a draw by the rules.',
  'why-unclear': 'The engine could not tell within its budget whether {move} does it.',
  'why-benefit':
    'The engine could not tell within its budget whether {move} does it, so it counts: benefit of the doubt.',
  'why-unknown': 'The solution book has no verdict on {move} yet.',
  'first-moves': 'First moves of {count, plural, one {# answer} other {# answers}}',
  'spread-holds': 'right',
  'spread-slower': 'mates later',
  'spread-slips-at-once': 'a draw on the spot',
  'spread-unclear': 'unclear',
  'spread-benefit': 'benefit of the doubt',
  'spread-rest': 'anything else',
  share: '{part, number} in {of, number}',
  'share-all': 'all',
  roll: 'Roll of solvers',
  'roll-count':
    '{count, plural, =0 {Nobody solved it.} one {# viewer solved it.} other {# viewers solved it.}}',
  'roll-more': 'and {count, number} more',
  'roll-nameless': '{count, plural, one {and # without a name} other {and # without a name}}',

  // Refusals of an answer
  'refused-over': 'The solution has been shown already. Your text is kept here, but cannot be sent any more.',
  'refused-too-long': 'The text has {length, number} characters; at most {most, number} are taken.',
  'refused-key': 'The form came without its key. Read the text back once more and send it from there.',
  'refused-name-marks': 'The name heaps more marks on one letter than can be shown. Leave some out.',
  'refused-empty': 'Write a line first.',
  'refused-name-too-long': 'The name is too long: at most {most, number} characters.',
  'refused-name': 'The name holds signs that cannot be read out: {found}. Leave them out.',
  'refused-key-used':
    'This form has been sent before with another text. Your receipt holds the first one; change it there.',
  'refused-meant': 'The chosen line does not belong to this text any more. Please choose again.',
  'refused-too-many': 'Too many answers from your address. Try again in a minute; your text stays here.',

  // Trouble
  'trouble-database-away-title': 'One moment, please',
  'trouble-database-away':
    'The puzzle desk is not reachable just now. Nothing was lost; try again in a few seconds.',
  'trouble-our-mistake-title': 'Our mistake',
  'trouble-our-mistake':
    'Something went wrong on our side, and it has been noted. Try again; if it stays, tell the host.',
  'trouble-not-found-title': 'Nothing here',
  'trouble-not-found': 'There is no page at this address. The puzzles are on the first page.',
  'trouble-foreign-page-title': 'Not from this page',
  'trouble-foreign-page':
    'The form came from another address than ours, so it was not taken. Open the puzzle page and send it from there.',
  'trouble-too-large-title': 'Too long',
  'trouble-too-large':
    'What was sent is larger than 64 kilobytes. An answer may have up to 4,000 characters.',
  'trouble-wrong-type-title': 'Not a form',
  'trouble-wrong-type':
    'Expected a form (application/x-www-form-urlencoded) or JSON (application/json), not compressed.',
  'trouble-not-json-title': 'Not JSON',
  'trouble-not-json': 'Expected a JSON object with the field "text".',
  'trouble-too-many-title': 'Too many at once',
  'trouble-too-many': 'Too many requests came from your address. Try again in a minute.',
  'trouble-kept': 'Your text',
  'send-again': 'Send again',
  ...correctionsEn,
} as const;
