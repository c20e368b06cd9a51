// Ends this process when the supervisor is gone, however it went. Imported first by web and worker.

import { log } from './log.ts';

/** Tells the supervisor that the process is ready. Says nothing where there is none. */
export function sayReady(): void {
  process.send?.('ready');
}

/** Calls `end` once, on SIGTERM or when the channel to the supervisor breaks. */
export function followParent(end: () => Promise<void>): void {
  let isEnding = false;
  const once = (why: string) => {
    if (isEnding) return;
    isEnding = true;
    log().info({ why }, 'ending');
    const insist = setTimeout(() => process.exit(1), 10_000);
    insist.unref();
    end().then(
      () => process.exit(0),
      () => process.exit(1),
    );
  };
  process.on('SIGTERM', () => once('asked to'));
  process.on('SIGINT', () => once('asked to'));
  if (process.send !== undefined) process.on('disconnect', () => once('the supervisor is gone'));
}
