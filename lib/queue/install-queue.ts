// The queue's own tables, installed in the migration step and never by web or worker.

import { Logger, runMigrations } from 'graphile-worker';

/** A logger for the queue library that passes on what somebody should read. */
export function quietQueueLogger(say: (line: string) => void): Logger {
  return new Logger(() => (level, message) => {
    if (level === 'error' || level === 'warning') say(message);
  });
}

/** Installs or upgrades the queue's schema. */
export async function installQueue(url: string): Promise<void> {
  await runMigrations({ connectionString: url, logger: quietQueueLogger((line) => console.error(line)) });
}
