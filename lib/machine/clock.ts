// The only clock of the program outside the database. Whether an answer is in time is never asked
// here: the database's clock decides that.

/** The machine's time of day, for pages and logs. */
export function now(): Date {
  return new Date();
}

/** Waits. */
export function sleep(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
