// Can a cell be taken for a formula by a spreadsheet program? Cells that could are written with an
// apostrophe before them, and exactly one such guard is taken off again on the way in.

const GUARDED = /^['\s\p{Cc}"]*[=+\-@\u{ff1d}\u{ff0b}\u{ff0d}\u{ff20}\t\r\n\0]/u;

/** The cell as it may stand in a CSV or TSV file: with an apostrophe before it where it could run as a formula. */
export function guardCell(cell: string): string {
  return GUARDED.test(cell) ? `'${cell}` : cell;
}

/** The cell as it was before `guardCell`; cells without a guard stay as they are. */
export function unguardCell(cell: string): string {
  return cell.startsWith("'") && GUARDED.test(cell.slice(1)) ? cell.slice(1) : cell;
}
