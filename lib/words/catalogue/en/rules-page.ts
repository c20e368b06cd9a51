// How answers are read and marked, in short, in English: the public form of the marking rules.

export const rulesPageEn = {
  outcomes: 'What an answer can be',
  'label-solved': 'Solved',
  'means-solved': 'Every move of yours holds, as far as the puzzle asks.',
  'label-slower': 'Mates, but later',
  'means-slower': 'It is still mate by force, one move later than asked.',
  'label-unfinished': 'Right so far',
  'means-unfinished': 'Right as far as it goes; it stops too early, or meets a reply that is not the best.',
  'label-slipped': 'Slips at move …',
  'means-slipped': 'It begins well; at this move the defender gets away. You are told how.',
  'label-wrong': 'Wrong first move',
  'means-wrong': 'The first move does not do it. You are told the reply that defeats it.',
  'label-impossible': 'Not legal at move …',
  'means-impossible': 'A move cannot be played in the position that your line has reached.',
  'label-unclear': 'Needs the host',
  'means-unclear': 'The engine cannot tell within its budget, or a text needs a person. The host decides.',
  reading: 'How your text is read',
  'reading-any':
    'Any notation and any language will do, with or without move numbers, with words between the moves. Only legal moves count.',
  'reading-shown':
    'You see what was read before you send it. If a text fits several lines, you may say which one you mean, or leave it open; then the better one for you is taken, but never a different square or a different kind of man.',
  'reading-gaps': 'You may leave out the replies. A gap is filled in your favour.',
  'reading-corrections':
    'To correct yourself, say so: “no, sorry”, “instead”, “I meant”. Of two moves for the same place, neither taken back, the worse one counts.',
  'reading-claims': 'What you say about the moves (“wins”, “mate in 4”, “!”) changes nothing.',
  judging: 'How your line is judged',
  'judging-verified':
    'Every move is checked by an engine to the end, within a fixed budget and never by the clock: the same answer gets the same mark on any machine. Accepted mates and refutations are replayed by an independent checker.',
  'judging-any-way': 'Every way that works counts, not only the host’s.',
  'judging-replies':
    'Your line should meet a reply worth answering: one that lasts as long as any, or one that takes what you offer.',
  'judging-far':
    'How far to go stands under the task. In a mate task the last reply and the mating move may be left out unless the puzzle says otherwise; once your line is finished, what you write after it costs nothing.',
  'judging-branches': 'If you give several lines against different replies, the best of them counts.',
  points: 'Points',
  'points-full':
    'Full line: 5 for solved; 2 for a mate that comes later, or more if more of it holds; otherwise 1 and up to 3 more for the part that holds, once the first move holds; else 0.',
  'points-key': 'Key move, where the puzzle says so: 5 if the first move holds, 2 if it mates later, else 0.',
  'points-kinder':
    'Both are kinder than solving contests, which give nothing for the key alone from three moves on, and nothing for a slower mate.',
  'points-never-less':
    'Writing on never costs: an answer never earns less than the same answer cut off earlier.',
  'points-last':
    'The last answer that came in before the close counts. The time of an answer never changes its points; those with equal points share a rank.',
  after: 'After you sent it',
  'after-reveal':
    'Nobody sees answers or marks before the reveal, you included. Then your receipt shows the mark, the verdict on every move and the reason.',
  'after-comments': 'Comments that you write elsewhere are public there; that is not in our hands.',
  'after-look':
    'After the reveal you can ask once, on your receipt, for a second look; the host settles it. A move that the engine could not settle and nobody ruled on before the reveal counts as holding: benefit of the doubt. The host can overrule a mark, with a reason; the engine’s verdict stays visible beside it.',
  'after-regrade':
    'Where something turns up later, everybody is marked again on the same footing. After the reveal a mark can rise that way; it falls only if the host decides so for that one answer.',
  'after-correction':
    'A puzzle may be corrected, prolonged or taken out of the count; a notice on its page says so, and the address stays. Your answer is marked on the position that you saw; where that cannot be told, on whichever is kinder to you. A puzzle out of the count gives no points and breaks no run.',
  privacy: 'What is kept of you',
  'privacy-kept':
    'Your text, your name if you gave one, the times, the language of your browser, and a cookie by which your next answer is known as yours. Your network address is kept only as a keyed hash, for limits, for at most 7 days.',
  'privacy-withdraw':
    'With your receipt link you can withdraw an answer at any time: name and text are erased, in the standings too.',
  'privacy-law':
    'Where prizes are given or minors may take part, local contest, prize and privacy law applies. Nothing here is legal advice; the host should ask someone licensed to give it.',
} as const;
