// What each liberty costs when a text is taken one way and not another. Only the order of the sums counts:
// readings with the least sum survive, all of them (rule R6). No cost knows whether a move is good.

/** Costs, small whole numbers; the comments say which texts fix their order. */
export const COST = {
  /** A reply left out, where nothing says so; and where a word or number does. */
  gap: 6,
  namedGap: 2,
  /** A further one in a list of the solver's moves alone, and a reply in such a list. */
  nextGap: 1,
  replyInList: 4,
  /** "or" before a move that continues. */
  continuesAfterOr: 5,
  continuesAfterSlash: 1,
  continuesAfterCorrection: 4,
  continuesInTry: 3,
  restartInTry: 5,
  /** A written number that does not fit (rule R11: it never forbids). */
  number: 3,
  side: 2,
  /** A move put in the place of another: with a cue, in brackets, with none. */
  cuedBranch: 1,
  plainBranch: 8,
  cuedChoice: 1,
  bracketChoice: 3,
  plainChoice: 9,
  /** The same where nothing begins anew: an illegal move is likelier. */
  unmarked: 40,
  /** A move that cannot be played and is taken back at once. */
  takenBack: 2,
  resume: 4,
  /** A move named again. */
  mention: 1,
  /** What is said to refute a move, taken for the solver's own. */
  refutationCounts: 22,
  /** A move announced as a threat and not counted (rule R10). */
  skippedThreat: 4,
  /** The defender's threat, taken for a move of the line. */
  menaceCounts: 12,
  /** What is named beside such a threat: one more of them, or the answer to it. */
  menaceTooCounts: 3,
  skippedMenaceToo: 1,
  /** What stands on the board already is told, not played; so is the defender's move before any answer. */
  toldBefore: 4,
  /** A square in prose, not taken. */
  skippedProse: 3,
  skippedLikely: 8,
  skippedMalformed: 10,
  skippedMove: 30,
  skippedInSideLine: 12,
  /** A move turned down and counted all the same. */
  rejectedCounts: 30,
  doubtedCounts: 4,
  /** A doubtful move put aside, and none in its place. */
  doubtUnreplaced: 6,
  typo: 8,
  badReply: 9,
  stop: 15,
  /** Each move after the stop. */
  dropped: 10,
  languageChange: 4,

  noMainLine: 20,
} as const;

/** By rarity of the rarest language needed. */
export const RARITY_COST: readonly number[] = [0, 1, 2, 5, 5];
