// The puzzle file of `--puzzle`, with the options that overrule it.

import { parsePuzzleFile } from '#lib/book/parse-puzzle-file.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { required, type Values, wholeNumber } from './arguments.ts';
import { readTextFile } from './read-file.ts';

/** The most nodes that a verdict may be given. */
const MOST_NODES = 10_000_000_000;

/** The terms of the puzzle, or one line that names the field and what was expected. */
export function readPuzzle(values: Values): Result<PuzzleTerms, string> {
  const text = readTextFile('puzzle', required(values, 'puzzle'));
  if (!text.ok) return text;
  let json: unknown;
  try {
    json = JSON.parse(text.value);
  } catch (error) {
    return refuse(
      `--puzzle: expected a file with a JSON object: ${error instanceof Error ? error.message : ''}`,
    );
  }
  const parsed = parsePuzzleFile(json);
  if (!parsed.ok) {
    const { field, expected, found } = parsed.reason;
    return refuse(`--puzzle: ${field}: expected ${expected}, found ${found ?? 'nothing'}`);
  }
  return overruled(parsed.value, values);
}

function overruled(terms: PuzzleTerms, values: Values): Result<PuzzleTerms, string> {
  const scheme = values.get('scheme') ?? terms.scheme;
  if (scheme !== 'full-line' && scheme !== 'key-move') {
    return refuse(`--scheme: expected full-line or key-move, found "${scheme.slice(0, 40)}"`);
  }
  const isStrict = terms.isStrict || values.has('strict');
  if (!values.has('budget-nodes')) return ok({ ...terms, scheme, isStrict });
  const nodes = wholeNumber(values, 'budget-nodes', { least: 1, most: MOST_NODES });
  return nodes.ok ? ok({ ...terms, scheme, isStrict, budgetNodes: nodes.value }) : nodes;
}
