// Outcomes, flags and explanations of marks in English.

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
} as const;
