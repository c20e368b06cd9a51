// The host has read a sheet out: its names step back on the next sheets. Only numbers are noted.

import { ok, type Result } from '#lib/kit/result.ts';
import type { SheetLength } from '#lib/readout/write-sheet.ts';
import { inTransaction } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import type { Locale } from '#lib/words/locale.ts';
import { type SheetReason, showSheet } from './show-sheet.ts';

/** Notes the names of the sheet as it stands at this length and pace; gives how many. */
export async function noteSheetRead(read: {
  readonly puzzleId: number;
  readonly memberId: number;
  readonly locale: Locale;
  readonly length: SheetLength;
  readonly wordsAMinute: number;
}): Promise<Result<number, SheetReason>> {
  const shown = await showSheet(read);
  if (!shown.ok) return shown;
  const solvers = shown.value.sheet.names.map((one) => one.solverId);
  const { puzzleId, memberId } = read;
  await inTransaction((tx) =>
    appendLog(tx, { kind: 'sheet-read', puzzleId, memberId, details: { solvers } }),
  );
  return ok(solvers.length);
}
