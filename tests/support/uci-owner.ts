// A process that asks an odd program which heeds neither words nor the end of its input. The odd program
// writes process ids into the file that is named by the first argument.

import { join } from 'node:path';
import { askUciProgram } from '#lib/machine/uci-program.ts';
import { positionOf, START_FEN } from './positions.ts';

const program = join(import.meta.dirname, 'uci-programs/odd-program.mjs');
await askUciProgram(
  { path: process.execPath, args: [program, 'heeds-nothing', process.argv[2] ?? ''] },
  { position: positionOf(START_FEN), nodes: 1000, budgetMs: 600_000 },
);
