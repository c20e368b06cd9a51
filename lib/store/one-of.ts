// Words in the database are text with a check; here they become the program's closed unions again.

/** The word as one of the list; throws where the database holds another, which is our own mistake. */
export function oneOf<const T extends string>(list: readonly T[], word: string): T {
  const found = list.find((one) => one === word);
  if (found === undefined) throw new Error(`The database holds "${word}"; expected ${list.join(', ')}.`);
  return found;
}
