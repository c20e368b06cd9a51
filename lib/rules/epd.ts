// Extended position description: four fields of FEN and operations, one position a line.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { type FenReason, parseFen } from './parse-fen.ts';
import type { Position } from './position.ts';

/** A position with its operations: opcode -> operands, quotes taken off. */
export interface EpdRecord {
  readonly position: Position;
  readonly operations: ReadonlyMap<string, readonly string[]>;
}

/** Why a line is no EPD: its position, or the operation (from 1) that cannot be split. */
export type EpdReason =
  | { readonly code: 'position'; readonly fen: FenReason }
  | { readonly code: 'operation'; readonly number: number; readonly found: string };

const POSITION = /^\s*(\S+\s+\S+\s+\S+\s+\S+)((?:\s+\d+\s+\d+)?)(?=\s|;|$)/;
const OPERAND = /\s*(?:"([^"]*)"|([^\s";]+))/y;
const GAP = /[\s;]*/y;

/**
 * One line of EPD (PGN standard, section 16.2). Six FEN fields are taken as well, and operations parted by
 * semicolons in front instead of behind, as test suites of node counts have them. Opcodes `hmvc` and `fmvn`
 * set the clocks.
 */
export function parseEpd(line: string): Result<EpdRecord, EpdReason> {
  const head = POSITION.exec(line.slice(0, 300));
  const fields = head === null ? line.slice(0, 300) : `${head[1] ?? ''}${head[2] ?? ''}`;
  const parsed = parseFen(fields);
  if (!parsed.ok) return refuse({ code: 'position', fen: parsed.reason });
  const operations = parseOperations(line, head?.[0].length ?? 0);
  if (!operations.ok) return operations;
  const clock = number(operations.value.get('hmvc'), parsed.value.halfmoveClock);
  const move = number(operations.value.get('fmvn'), parsed.value.fullmoveNumber);
  return ok({
    position: { ...parsed.value, halfmoveClock: clock, fullmoveNumber: move },
    operations: operations.value,
  });
}

function parseOperations(line: string, from: number): Result<Map<string, string[]>, EpdReason> {
  const operations = new Map<string, string[]>();
  let at = skipGap(line, from);
  while (at < line.length) {
    const words: string[] = [];
    while (at < line.length && line.charAt(at) !== ';') {
      OPERAND.lastIndex = at;
      const word = OPERAND.exec(line);
      if (word === null) {
        if (line.slice(at).trim() === '') break;
        return refuse({
          code: 'operation',
          number: operations.size + 1,
          found: line.slice(at, at + 40).trim(),
        });
      }
      words.push(word[1] ?? word[2] ?? '');
      at = OPERAND.lastIndex;
      if (/^\s*;/.test(line.slice(at, at + 40))) break;
    }
    const [opcode, ...operands] = words;
    if (opcode !== undefined) operations.set(opcode, operands);
    at = skipGap(line, at);
  }
  return ok(operations);
}

function skipGap(line: string, at: number): number {
  GAP.lastIndex = at;
  GAP.exec(line);
  return Math.max(at, GAP.lastIndex);
}

function number(operands: readonly string[] | undefined, otherwise: number): number {
  const text = operands?.[0] ?? '';
  return /^\d{1,5}$/.test(text) ? Number(text) : otherwise;
}
