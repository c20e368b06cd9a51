// Compiled code is kept from run to run, so that a command is ready in a third of the time; all else is main.ts.

import { enableCompileCache } from 'node:module';
import { join } from 'node:path';

enableCompileCache(join(import.meta.dirname, '..', '..', '.cache', 'compiled'));
await import('./main.ts');
