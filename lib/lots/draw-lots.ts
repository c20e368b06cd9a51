// Who is drawn? RFC 3797: from a published list and public numbers, so that anybody can recompute it (rule S4).

/** One choice, with all that is needed to recompute it by hand. */
export interface LotStep {
  /** What stands before and after the key in the hash: the number of the choice, from 0, as four hex digits. */
  readonly affix: string;
  /** The hash as 32 hex digits; as a whole number it is divided by `poolSize`. */
  readonly md5: string;
  readonly poolSize: number;
  readonly remainder: number;
  /** The chosen entry's number in the published list, from 1. */
  readonly number: number;
  readonly name: string;
}

/** MD5 of bytes as 32 hex digits; handed in by the machine. */
type Md5 = (bytes: Uint8Array) => string;

/**
 * Draws `count` different entries (at most 65,536, at most all) in order. The key comes from `parseEntropy`.
 *
 * Source: RFC 3797, section 4: MD5 over the choice's number as two bytes, the key, the two bytes again; the
 * remainder by the number of entries left picks one of those left, in the published order.
 */
export function drawLots(
  names: readonly string[],
  { key, count, md5 }: { readonly key: string; readonly count: number; readonly md5: Md5 },
): readonly LotStep[] {
  const pool = names.map((name, index) => ({ name, number: index + 1 }));
  const middle = Uint8Array.from(key, (letter) => letter.charCodeAt(0));
  const steps: LotStep[] = [];
  for (let choice = 0; choice < count && pool.length > 0; choice += 1) {
    const ends = [choice >> 8, choice & 255];
    const digest = md5(Uint8Array.from([...ends, ...middle, ...ends]));
    const poolSize = pool.length;
    const remainder = Number(BigInt(`0x${digest}`) % BigInt(poolSize));
    const [chosen] = pool.splice(remainder, 1);
    if (chosen === undefined) throw new Error(`No entry ${remainder} of ${poolSize}`);
    const affix = choice.toString(16).padStart(4, '0');
    steps.push({ affix, md5: digest.toUpperCase(), poolSize, remainder, ...chosen });
  }
  return steps;
}
