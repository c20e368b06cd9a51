// `perft --fen FEN --depth D`

import { parseFen } from '#lib/rules/parse-fen.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { fenSentence } from '#lib/words/rules-sentences.ts';
import { required, type Values, wholeNumber } from './inner/arguments.ts';
import { openEngine } from './inner/open-engine.ts';
import { answer, complain } from './inner/output.ts';

export async function runPerft(values: Values): Promise<number> {
  const position = parseFen(required(values, 'fen'));
  if (!position.ok) {
    complain(`perft: --fen: ${fenSentence(position.reason, 'en')}`);
    return 2;
  }
  const depth = wholeNumber(values, 'depth', { least: 0, most: 30 });
  if (!depth.ok) {
    complain(`perft: ${depth.reason}`);
    return 2;
  }
  const engine = await openEngine();
  const { perftCount } = await import('#lib/engine/count-moves.ts');
  const start = performance.now();
  const nodes = perftCount(engine, writeFen(position.value), depth.value);
  await answer({ nodes, ms: Math.round(performance.now() - start) });
  return 0;
}
