// Which parts can a word play in a sentence about moves?

/** The part a word can play in a phrase. */
export type WordRole =
  | 'piece'
  | 'take'
  | 'go'
  | 'give'
  | 'promote'
  | 'castle'
  | 'short'
  | 'long'
  | 'passant'
  | 'check'
  | 'to'
  | 'on'
  | 'from'
  | 'article'
  | 'filler'
  | 'rank'
  | 'pronoun'
  | 'two-squares';
