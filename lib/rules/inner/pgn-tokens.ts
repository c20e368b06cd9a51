// The tokens of the first game of a PGN text that matter: tag pairs and main-line moves, with their lines.

import { ok, type Result, refuse } from '#lib/kit/result.ts';

/** A move as written in the main line, and the line of the text (from 1) on which it stands. */
interface WrittenMove {
  readonly text: string;
  readonly line: number;
}

/** Tags and main-line moves of one game. */
interface PgnTokens {
  readonly tags: ReadonlyMap<string, string>;
  readonly moves: readonly WrittenMove[];
}

type TokenReason =
  | { readonly code: 'not-closed'; readonly opened: '{' | '(' | '['; readonly line: number }
  | { readonly code: 'tag'; readonly found: string; readonly line: number };

/** Where the reading stands; only this file sees it. */
interface Cursor {
  readonly text: string;
  at: number;
  line: number;
  depth: number;
  /** Line of the outermost open bracket. */
  openedAt: number;
}

const RESULTS: readonly string[] = ['1-0', '0-1', '1/2-1/2', '*'];
const TAG = /^\[\s*(\w+)\s+"((?:[^"\\]|\\.)*)"\s*\]/;
const WORD = /^[^\s{}()[\];$]+/;

/** Splits the first game; it ends at its result, or where the next game's tags begin. Linear in the text. */
export function tokenisePgn(text: string): Result<PgnTokens, TokenReason> {
  const cursor: Cursor = { text, at: 0, line: 1, depth: 0, openedAt: 0 };
  const tags = new Map<string, string>();
  const moves: WrittenMove[] = [];
  while (cursor.at < text.length) {
    const sign = text.charAt(cursor.at);
    if (sign === '[' && cursor.depth === 0) {
      if (moves.length > 0) break;
      const tag = TAG.exec(text.slice(cursor.at, cursor.at + 2000));
      if (tag === null) {
        const found = text.slice(cursor.at, cursor.at + 60).split('\n', 1)[0] ?? '';
        return refuse({ code: 'tag', found, line: cursor.line });
      }
      tags.set(tag[1] ?? '', (tag[2] ?? '').replace(/\\(.)/g, '$1'));
      advance(cursor, tag[0].length);
    } else if (sign === '{') {
      const end = text.indexOf('}', cursor.at);
      if (end < 0) return refuse({ code: 'not-closed', opened: '{', line: cursor.line });
      advance(cursor, end + 1 - cursor.at);
    } else if (!skipSign(cursor, sign)) {
      const word = WORD.exec(text.slice(cursor.at, cursor.at + 200))?.[0] ?? sign;
      if (cursor.depth === 0) {
        if (RESULTS.includes(word)) break;
        for (const move of movesOf(word)) moves.push({ text: move, line: cursor.line });
      }
      advance(cursor, word.length);
    }
  }
  if (cursor.depth > 0) return refuse({ code: 'not-closed', opened: '(', line: cursor.openedAt });
  return ok({ tags, moves });
}

/** Passes over white space, line comments, escaped lines, glyph numbers and the brackets of variations. */
function skipSign(cursor: Cursor, sign: string): boolean {
  const { text, at } = cursor;
  const isEscape = sign === '%' && (at === 0 || text.charAt(at - 1) === '\n');
  if (sign === ';' || isEscape) {
    const end = text.indexOf('\n', at);
    advance(cursor, (end < 0 ? text.length : end) - at);
    return true;
  }
  if (sign === '(') {
    if (cursor.depth === 0) cursor.openedAt = cursor.line;
    cursor.depth += 1;
  } else if (sign === ')') {
    cursor.depth = Math.max(0, cursor.depth - 1);
  } else if (sign === '$') {
    advance(cursor, /^\$\d*/.exec(text.slice(at, at + 10))?.[0].length ?? 1);
    return true;
  } else if (!/\s/.test(sign)) {
    return false;
  }
  advance(cursor, 1);
  return true;
}

function advance(cursor: Cursor, count: number): void {
  for (let index = cursor.at; index < cursor.at + count; index += 1) {
    if (cursor.text.charCodeAt(index) === 10) cursor.line += 1;
  }
  cursor.at += count;
}

/** `12.Nf3`, `12...`, `Nf3!`, `e.p.`: the move in the word, if it holds one. */
function movesOf(word: string): readonly string[] {
  const move = word.replace(/^\d+\.+|^\d+$|^\.+/, '');
  return move === '' || move === 'e.p.' || /^[!?+#=]+$/.test(move) ? [] : [move];
}
