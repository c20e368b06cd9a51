// `lots --names FILE --entropy "..." --count K`

import { createHash } from 'node:crypto';
import { drawLots } from '#lib/lots/draw-lots.ts';
import { type EntropyReason, parseEntropy } from '#lib/lots/parse-entropy.ts';
import { required, type Values, wholeNumber } from './inner/arguments.ts';
import { answer, complain } from './inner/output.ts';
import { readTextFile } from './inner/read-file.ts';

export async function runLots(values: Values): Promise<number> {
  const text = readTextFile('names', required(values, 'names'));
  if (!text.ok) return refused(text.reason);
  const names = text.value
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  if (names.length === 0) return refused('--names: expected a file with one name a line, found none');
  const key = parseEntropy(required(values, 'entropy'));
  if (!key.ok) return refused(`--entropy: ${entropySentence(key.reason)}`);
  const count = wholeNumber(values, 'count', { least: 1, most: Math.min(names.length, 65_536) });
  if (!count.ok) return refused(count.reason);
  const md5 = (bytes: Uint8Array): string => createHash('md5').update(bytes).digest('hex');
  const steps = drawLots(names, { key: key.value, count: count.value, md5 });
  await answer({ chosen: steps.map(({ name }) => name), key: key.value, names: names.length, steps });
  return 0;
}

function entropySentence(reason: EntropyReason): string {
  if (reason.code === 'no-numbers')
    return `source ${reason.source} holds no number; expected whole numbers, a slash between sources`;
  return `source ${reason.source}: expected whole numbers, found "${reason.found}"`;
}

function refused(why: string): number {
  complain(`lots: ${why}`);
  return 2;
}
