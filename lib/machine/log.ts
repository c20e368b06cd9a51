// The program's own log: JSON lines on standard output, which the start script keeps in a file.
// Never a name, a text, a token or an address in clear.

import { type Logger, pino } from 'pino';
import { config } from './config.ts';

let logger: Logger | null = null;

/** The log of this process. */
export function log(): Logger {
  logger ??= pino({ level: config().logLevel, base: { pid: process.pid } });
  return logger;
}
