// `read`: texts in, what they say out, a line each.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { readText } from '#lib/reading/read-text.ts';
import { summariseReadings } from '#lib/reading/summarise-readings.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import { fenSentence } from '#lib/words/rules-sentences.ts';
import { answerLines, type Fields, idField, textField } from './inner/json-lines.ts';

export async function runRead(): Promise<number> {
  // Lines come in crowds for one puzzle: its position is parsed once.
  let last: { readonly fen: string; readonly position: Position } | null = null;
  return answerLines((fields) => {
    const { fen } = fields;
    if (last === null || last.fen !== fen) {
      const parsed = positionField(fields);
      if (!parsed.ok) return parsed;
      last = { fen: String(fen), position: parsed.value };
    }
    return readLine(fields, last.position);
  });
}

function positionField(fields: Fields): Result<Position, string> {
  const fen = textField(fields, 'fen');
  if (!fen.ok) return fen;
  const position = parseFen(fen.value);
  return position.ok ? position : refuse(`"fen": ${fenSentence(position.reason, 'en')}`);
}

function readLine(fields: Fields, position: Position): Result<unknown, string> {
  const id = idField(fields);
  if (!id.ok) return id;
  const text = textField(fields, 'text');
  if (!text.ok) return text;
  const { line, branches, readings, solverOnly, impossibleAt, kind } = summariseReadings(
    readText({ position, text: text.value }),
  );
  return ok({ id: id.value, line, branches, readings, solverOnly, impossibleAt, kind });
}
