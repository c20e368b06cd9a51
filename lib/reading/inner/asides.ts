// What stands in comments and is no part of any answer: addresses of the web and of mail, faces made of signs.

/** The end of the signs without a blank from `at`. */
export function runEnd(text: string, at: number): number {
  let end = at;
  while (end < text.length && end < at + 300 && text.charCodeAt(end) > 32) end += 1;
  return end;
}

/** An address of the web or of mail. */
export function isAddress(text: string, start: number, end: number): boolean {
  if (text.startsWith('http', start) || text.startsWith('www.', start)) return true;
  const at = text.indexOf('@', start);
  return at > start && at < end - 1 && text.indexOf('.', at) > at && text.indexOf('.', at) < end;
}

/** ":D", ";-P": a face of signs and a letter. */
const FACE = /^[:;=]-?[DPOXS](?![\p{L}\d])/u;

/** The end of a face that begins at `at` behind a blank; `at` itself where there is none. */
export function faceEnd(text: string, at: number): number {
  const face = FACE.exec(text.slice(at, at + 4));
  return face !== null && ' \n'.includes(text.charAt(at - 1)) ? at + face[0].length : at;
}
