// The commands and their options. Each is loaded only when it is asked for, so that reading a text never
// waits for the engine.

import type { Option, Values } from './arguments.ts';

/** A command of the command line; `run` gives the exit status. */
export interface Command {
  readonly name: string;
  readonly does: string;
  readonly options: readonly Option[];
  run(values: Values): Promise<number>;
}

const FEN: Option = { name: 'fen', takes: 'a FEN', isRequired: true };

export const COMMANDS: readonly Command[] = [
  {
    name: 'perft',
    does: 'counts the legal move sequences of a length',
    options: [FEN, { name: 'depth', takes: 'a whole number of plies', isRequired: true }],
    run: async (values) => (await import('../perft.ts')).runPerft(values),
  },
  {
    name: 'prove',
    does: 'classifies every first move of a mate in N',
    options: [
      FEN,
      { name: 'moves', takes: 'a whole number of moves', isRequired: true },
      { name: 'proof', takes: null },
    ],
    run: async (values) => (await import('../prove.ts')).runProve(values),
  },
  {
    name: 'read',
    does: 'reads texts: {"id","fen","text"} a line on standard input',
    options: [],
    run: async () => (await import('../read.ts')).runRead(),
  },
  {
    name: 'book',
    does: 'verifies a puzzle: the solution book, a row a line, and the soundness report last',
    options: [
      { name: 'puzzle', takes: 'a puzzle file (JSON)', isRequired: true },
      { name: 'budget-nodes', takes: 'a whole number of nodes' },
    ],
    run: async (values) => (await import('../book.ts')).runBook(values),
  },
  {
    name: 'mark',
    does: 'marks answers: {"id","text","meant"?,"author"?,"at"?} a line on standard input',
    options: [
      { name: 'puzzle', takes: 'a puzzle file (JSON)', isRequired: true },
      { name: 'scheme', takes: 'full-line or key-move' },
      { name: 'strict', takes: null },
    ],
    run: async (values) => (await import('../mark.ts')).runMark(values),
  },
  {
    name: 'lots',
    does: 'draws names in public (RFC 3797)',
    options: [
      { name: 'names', takes: 'a file with one name a line', isRequired: true },
      { name: 'entropy', takes: 'public numbers, a slash between sources', isRequired: true },
      { name: 'count', takes: 'a whole number of names', isRequired: true },
    ],
    run: async (values) => (await import('../lots.ts')).runLots(values),
  },
  {
    name: 'uci',
    does: 'speaks the UCI protocol on standard input and output',
    options: [],
    run: async () => (await import('../uci.ts')).runUci(),
  },
];

/** What `--help` prints. */
export function usage(): string {
  const lines = COMMANDS.map(({ name, does, options }) => {
    const words = options.map((option) => {
      const word =
        option.takes === null ? `--${option.name}` : `--${option.name} ${option.name.toUpperCase()}`;
      return option.isRequired === true ? word : `[${word}]`;
    });
    return `  ${[name, ...words].join(' ')}\n      ${does}\n`;
  });
  return `npm run -s tailpiece -- COMMAND ...\n\n${lines.join('')}`;
}
