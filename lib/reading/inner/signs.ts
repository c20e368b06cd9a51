// What single characters mean in a written move: files, ranks, captures, boundaries.

/** What lies off the board ("a9") is read as a coordinate that no move has. */
export const OFF_BOARD = 9;

/** Letters of other scripts typed for a file: Cyrillic look-alikes and names, Greek alphabet. */
const FOREIGN_FILES = new Map<string, number>([
  ['а', 0],
  ['б', 1],
  ['в', 1],
  ['с', 2],
  ['ц', 2],
  ['д', 3],
  ['е', 4],
  ['ф', 5],
  ['г', 6],
  ['А', 0],
  ['В', 1],
  ['С', 2],
  ['Е', 4],
  ['Н', 7],
  ['α', 0],
  ['β', 1],
  ['γ', 2],
  ['δ', 3],
  ['ε', 4],
  ['ζ', 5],
  ['η', 6],
  ['θ', 7],
]);

/** The rank 0 to 7 of a digit, or -1. */
export function rankAt(text: string, at: number): number {
  const rank = text.charCodeAt(at) - 49;
  return rank >= 0 && rank < 8 ? rank : -1;
}

/** The file 0 to 7 of the letter, or -1. Letters of other scripts count only before a rank. */
export function fileAt(text: string, at: number, takesCapitals: boolean): number {
  const code = text.charCodeAt(at);
  if (code >= 97 && code <= 104) return code - 97;
  if (takesCapitals && code >= 65 && code <= 72) return code - 65;
  if (code < 128 || rankAt(text, at + 1) < 0) return -1;
  return FOREIGN_FILES.get(text.charAt(at)) ?? -1;
}

/** True for a letter of any script. */
export function isLetterAt(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  if (code < 128) return (code >= 97 && code <= 122) || (code >= 65 && code <= 90);
  return code >= 0xaa && /^[\p{L}\p{M}]$/u.test(text.charAt(at));
}

/** True for an ASCII digit. */
export function isDigitAt(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code >= 48 && code <= 57;
}

/** True for a letter or digit. */
export function isWordAt(text: string, at: number): boolean {
  return isDigitAt(text, at) || isLetterAt(text, at);
}

/** True for signs that say "takes" inside a move, the Chinese verb among them. */
export function isCaptureSign(sign: string): boolean {
  return sign !== '' && 'xX:*хХ吃'.includes(sign);
}

/** True for a capital letter that has a small form. */
export function isCapital(sign: string): boolean {
  return sign !== sign.toLowerCase();
}
