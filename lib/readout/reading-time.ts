// How long does a text take to read aloud?

/** Words a minute of an unhurried presenter; common practice, no source. */
export const WORDS_A_MINUTE = 150;

/** Words of a text as an ear counts them: runs of anything but blanks that hold a letter or a figure. */
export function countWords(text: string): number {
  return text.split(/\s+/u).filter((word) => /[\p{L}\p{N}]/u.test(word)).length;
}

/** Seconds to read a text aloud, a breath of 0.4 s at each full stop and colon included. */
export function readingSeconds(text: string, wordsAMinute: number): number {
  const breaths = text.match(/[.:;!?](?=\s|$)/gu)?.length ?? 0;
  return (countWords(text) * 60) / wordsAMinute + breaths * 0.4;
}
