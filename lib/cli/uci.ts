// `uci`: our engine behind the UCI protocol, for any chess program or test bench.

import { setImmediate as nextTurn } from 'node:timers/promises';
import { textLines } from '#lib/machine/text-lines.ts';
import { openEngine } from './inner/open-engine.ts';
import { writeText } from './inner/output.ts';

export async function runUci(): Promise<number> {
  const engine = await openEngine();
  const { createUciSession } = await import('#lib/engine/uci-protocol.ts');
  const session = createUciSession(engine);
  let isOpen = true;
  let isEndless = false;
  let wake = (): void => {};
  const listening = listen(async (text) => {
    if (/^\s*go\b/.test(text)) isEndless = /\binfinite\b/.test(text);
    await say(session.handle(text));
    wake();
    return !session.isOver();
  }).finally(() => {
    isOpen = false;
    wake();
  });
  while (!session.isOver() && (isOpen || session.isSearching())) {
    if (!session.isSearching()) {
      await new Promise<void>((resolve) => {
        wake = resolve;
        // Between the question above and here nothing can have happened: both are in one turn.
      });
      continue;
    }
    // Nobody is left who could say stop: a search without end of its own must not run on for ever.
    if (!isOpen && isEndless) await say(session.handle('stop'));
    else await say(session.work());
    // Lines that came meanwhile are taken between two slices.
    await nextTurn();
  }
  await listening;
  return 0;
}

async function listen(take: (text: string) => Promise<boolean>): Promise<void> {
  for await (const read of textLines(process.stdin)) {
    if ('text' in read && !(await take(read.text))) return;
  }
}

async function say(lines: readonly string[]): Promise<void> {
  if (lines.length > 0) await writeText(`${lines.join('\n')}\n`);
}
