// Moves as spoken words in English.

export const movesEn = {
  king: 'king',
  queen: 'queen',
  rook: 'rook',
  bishop: 'bishop',
  knight: 'knight',
  pawn: 'pawn',
  // {man}: the man with its starting square where two could go: "rook from a1".
  'from-square': '{man} from {square}',
  'goes-to': '{man} to {square}',
  takes: '{man} takes {square}',
  'takes-en-passant': '{man} takes {square} en passant',
  'castles-short': 'castles short',
  'castles-long': 'castles long',
  promotes: '{move}, promoting to a {man}',
  'with-check': '{move}, check',
  'with-mate': '{move}, mate',
} as const;
