// The sample scenario as data: an invented show, invented viewers, problems by composers of long ago.
// Ages are in days before the making; the first two episodes are over, the third is open.

/** A comment of an invented viewer, so many days before the making. */
export interface SampleComment {
  readonly author: string;
  readonly daysAgo: number;
  readonly text: string;
}

/** An episode with its puzzle. */
export interface SampleEpisode {
  readonly title: string;
  readonly puzzle: string;
  readonly fen: string;
  readonly moves: number;
  readonly published: string;
  readonly openedDaysAgo: number;
  /** Null: still open, for a week more. */
  readonly closedDaysAgo: number | null;
  readonly comments: readonly SampleComment[];
}

export const SAMPLE_SHOW = 'The Lamplight Board';

export const SAMPLE_EPISODES: readonly SampleEpisode[] = [
  {
    title: 'A pawn in passing',
    puzzle: 'In passing',
    // Friedrich Amelung, Düna-Zeitung. Black has just played g7-g5.
    fen: '7R/7p/5P1k/4PKpP/8/8/8/8 w - g6 0 1',
    moves: 2,
    published: '1.hxg6',
    openedDaysAgo: 21,
    closedDaysAgo: 15,
    comments: [
      { author: 'Ottoline Farrow', daysAgo: 20, text: '1. hxg6 e.p. and mate next' },
      { author: 'Bruno Kastell', daysAgo: 20, text: 'hxg6 (en passant!)' },
      { author: 'Mirela Dukova', daysAgo: 20, text: 'h5xg6 e.p.' },
      { author: 'Théo Lassalle', daysAgo: 19, text: 'hxg6 e.p., puis mat au coup suivant' },
      { author: 'Agneta Rosling', daysAgo: 19, text: 'I say 1.Rxh7+ and it is over' },
      { author: 'Pavel Ostrovid', daysAgo: 18, text: 'Лxh7+' },
      { author: 'Jun Takamori', daysAgo: 18, text: 'f7?? no, sorry, hxg6!' },
      { author: 'Leonie Habicht', daysAgo: 17, text: 'e6 mit der Idee e7' },
      { author: 'Wim Dorrestein', daysAgo: 17, text: 'Great episode, greetings from Zwolle' },
      { author: 'Sanna Ilvesmaa', daysAgo: 16, text: 'hxg6' },
      { author: 'Caspar Nightingale', daysAgo: 14, text: 'hxg6, sent too late, I know' },
    ],
  },
  {
    title: 'The modest promotion',
    puzzle: 'A modest promotion',
    // Samuel Loyd, 1876.
    fen: 'b7/PP6/8/8/7K/6B1/6N1/4R1bk w - - 0 1',
    moves: 3,
    published: '1.bxa8=N Kxg2 2.Nb6',
    openedDaysAgo: 14,
    closedDaysAgo: 8,
    comments: [
      { author: 'Ottoline Farrow', daysAgo: 13, text: '1. bxa8=N Kxg2 2. Nb6' },
      { author: 'Bruno Kastell', daysAgo: 13, text: 'bxa8S Kxg2 Sb6' },
      { author: 'Mirela Dukova', daysAgo: 12, text: 'bxa8=Q' },
      { author: 'Théo Lassalle', daysAgo: 12, text: '1. bxa8=C! Rxg2 2. Cb6' },
      { author: 'Agneta Rosling', daysAgo: 11, text: '1.bxa8=N' },
      { author: 'Jun Takamori', daysAgo: 11, text: 'b7xa8=N and then Nb6' },
      { author: 'Leonie Habicht', daysAgo: 10, text: '1. Txg1+ Kxg1' },
      { author: 'Sanna Ilvesmaa', daysAgo: 10, text: 'b8=Q, mates in a few' },
      { author: 'Wim Dorrestein', daysAgo: 9, text: 'Same as Ottoline' },
    ],
  },
  {
    title: 'Into the corner',
    puzzle: 'Into the corner',
    // Thomas R. Dawson, Illustrated London News, 1913.
    fen: 'nk6/brpp2p1/brp4p/1p6/8/8/8/4K2R w - - 0 1',
    moves: 2,
    published: '1.Rf1',
    openedDaysAgo: 3,
    closedDaysAgo: null,
    comments: [
      { author: 'Bruno Kastell', daysAgo: 2, text: 'Tf1! und Matt auf f8' },
      { author: 'Ottoline Farrow', daysAgo: 2, text: '1.Rf1 any 2.Rf8#' },
      { author: 'Jun Takamori', daysAgo: 2, text: 'Rxh6' },
      { author: 'Mirela Dukova', daysAgo: 1, text: 'Th1-f1' },
      { author: 'Théo Lassalle', daysAgo: 1, text: 'O-O' },
    ],
  },
];
