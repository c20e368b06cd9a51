// Loads the tables of tests/cases/reading (columns and escapes: the README there). Expected lines are
// turned into coordinates by chess.js, so that a wrong expectation is found before it judges the reader.

import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { Chess } from 'chess.js';

export interface ReadingCase {
  readonly id: string;
  readonly family: string;
  readonly fen: string;
  readonly text: string;
  /** Main line in coordinates; null where there is no move. */
  readonly line: readonly string[] | null;
  readonly readings: number;
  readonly isSolverOnly: boolean;
  readonly impossibleAt: number | null;
  readonly branches: readonly (readonly string[])[];
  readonly kind: 'answer' | 'unreadable' | 'chatter';
  /** Looked at only where the case names them. */
  readonly tries: readonly (readonly string[])[];
  readonly choices: readonly (readonly string[])[];
  readonly turned: readonly (readonly string[])[];
  readonly flags: readonly string[];
  readonly why: string;
  /** The reader is known not to read it so yet; counted by the bench as what it is, a miss. */
  readonly isMissed: boolean;
  /** Set aside: not run by the tests, reported by the bench. */
  readonly isSetAside: boolean;
}

const ROOT = new URL('../cases/', import.meta.url);

function rows(path: string): string[][] {
  const text = readFileSync(new URL(path, ROOT), 'utf8');
  return text
    .split('\n')
    .filter((line) => line.startsWith('| ') && !line.startsWith('| ---'))
    .slice(1)
    .map((line) => line.slice(1, line.lastIndexOf('|')).split(/(?<!\\)\|/))
    .map((cells) => cells.map((cell) => cell.trim()));
}

function plain(cell: string): string {
  const inner = cell.replace(/^`|`$/g, '');
  return inner.replace(/\\(u\{([0-9a-f]+)\}|.)/g, (_, sign: string, hex: string | undefined) => {
    if (hex !== undefined) return String.fromCodePoint(Number.parseInt(hex, 16));
    return sign === 'n' ? '\n' : sign === 't' ? '\t' : sign;
  });
}

/** SAN or coordinates to coordinates; a line with gaps must stand in coordinates and is checked by the gap test. */
function lineOf(fen: string, cell: string, id: string): string[] {
  if (cell === '[]' || cell === '') return [];
  const words = cell.split(/\s+/);
  if (words.every((word) => /^[a-h][1-8][a-h][1-8][qrbn]?$/.test(word))) return words;
  const board = new Chess(fen);
  return words.map((word) => {
    try {
      return board.move(word, { strict: false }).lan;
    } catch {
      throw new Error(`${id}: ${word} in "${cell}" is not legal`);
    }
  });
}

/** Where each position stands, by key. */
export function readingPositions(): Map<string, string> {
  return new Map(rows('reading/positions.md').map(([key, fen]) => [key ?? '', plain(fen ?? '')]));
}

function caseOf(cells: readonly string[], positions: Map<string, string>): ReadingCase {
  const [id = '', on = '', rawText = '', rawLine = '', also = '', why = ''] = cells;
  const fen = positions.get(on);
  if (fen === undefined) throw new Error(`${id}: no position ${on}`);
  const text = plain(rawText);
  const facts = also === '' ? [] : also.split(';').map((fact) => fact.trim());
  const values = (key: string): string[] =>
    facts.filter((fact) => fact.startsWith(`${key}=`)).map((fact) => fact.slice(key.length + 1));
  const lines = (key: string): string[][] => values(key).map((value) => lineOf(fen, value, id));
  const kind = values('kind')[0];
  return {
    id,
    family: id.replace(/-\d+$/, ''),
    fen,
    text,
    line: rawLine === '-' ? null : lineOf(fen, rawLine, id),
    readings: Number(values('readings')[0] ?? (rawLine === '-' ? 0 : 1)),
    isSolverOnly: facts.includes('solver-only'),
    impossibleAt: Number(values('impossible')[0] ?? 0) || null,
    branches: lines('branch'),
    kind: kind === 'chatter' || kind === 'unreadable' ? kind : 'answer',
    tries: lines('try'),
    choices: lines('choice'),
    turned: lines('turned'),
    flags: facts.filter((fact) => !fact.includes('=') && fact !== 'solver-only' && fact !== 'missed'),
    why,
    isMissed: facts.includes('missed'),
    isSetAside: (createHash('sha256').update(text).digest()[0] ?? 0) % 5 === 0,
  };
}

/** The forty examples. */
export function readingExamples(): ReadingCase[] {
  const positions = readingPositions();
  return rows('reading-examples.md').map((cells) => caseOf(cells, positions));
}

/** All cases of tests/cases/reading, the set-aside ones included. */
export function readingCases(): ReadingCase[] {
  const positions = readingPositions();
  return readdirSync(new URL('reading/', ROOT))
    .filter((name) => name.endsWith('.md') && name !== 'README.md' && name !== 'positions.md')
    .sort()
    .flatMap((name) => rows(`reading/${name}`))
    .map((cells) => caseOf(cells, positions));
}
