/** A sheet of a spreadsheet; null: empty. */
export type Sheet = readonly (readonly Cell[])[];
export type Cell = string | number | null;

/**
 * A spreadsheet takes a text that begins so for a formula, and may run it; the last four are the signs' wide forms.
 * Apostrophes before it are looked past, so that a guard can be told from a text's own.
 */
const FORMULA = /^'*[=+\-@\t\r\n＝＋－＠]/;
const NEEDS_QUOTES = /[",\r\n]/;

/**
 * A sheet as RFC 4180 has it: commas, what holds one in quotation marks, those doubled, lines ended by CR LF. A text that
 * a spreadsheet would take for a formula gets an apostrophe before it as a guard (OWASP, CSV Injection); numbers never, so
 * -1.5 stays a number.
 */
export const csvText = (sheet: Sheet): string =>
  sheet.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');

function cellText(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const guarded = FORMULA.test(cell) ? `'${cell}` : cell;
  return NEEDS_QUOTES.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}

/** A cell's text without the guard that `csvText` may have put before it. */
export const unguarded = (cell: string): string =>
  cell.startsWith("'") && FORMULA.test(cell) ? cell.slice(1) : cell;
