import { readFileSync } from 'node:fs';

/** The text of a file in tests/cases. */
export function readCase(name: string): string {
  return readFileSync(new URL(`../cases/${name}`, import.meta.url), 'utf8');
}

/** The lines of a file in tests/cases, without empty lines and `#` comments. */
export function readCaseLines(name: string): string[] {
  return readCase(name)
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'));
}
