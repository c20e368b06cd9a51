// How long is a solver's run? Rule S2: consecutive puzzles solved; a void puzzle neither continues
// nor ends it, one that was not answered ends it.

/** What a puzzle was to a solver. */
export type Turn = 'solved' | 'not-solved' | 'not-answered' | 'void';

/** The run at the end of a history (oldest first), 0 where the last puzzle that counts was not solved. */
export function runAfter(history: readonly Turn[]): number {
  let run = 0;
  for (const turn of history) if (turn !== 'void') run = turn === 'solved' ? run + 1 : 0;
  return run;
}

/** The longest run anywhere in a history. */
export function longestRun(history: readonly Turn[]): number {
  let run = 0;
  let longest = 0;
  for (const turn of history) {
    if (turn === 'void') continue;
    run = turn === 'solved' ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return longest;
}
