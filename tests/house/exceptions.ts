/** A breach that is meant, with its reason. The list only shrinks. */
export const EXCEPTIONS: readonly { rule: string; path: string; reason: string }[] = [];
