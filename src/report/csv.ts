import type { Cell, Sheet } from './sheets';

/** A spreadsheet takes a text that begins so for a formula, and may run it. */
const FORMULA = /^[=+\-@\t\r]/;
const NEEDS_QUOTES = /[",\r\n]/;

/**
 * A sheet as RFC 4180 has it: commas, what holds one in quotation marks, those doubled, lines ended by CR LF. A text that
 * a spreadsheet would take for a formula gets an apostrophe before it (OWASP, CSV Injection); numbers never, so -1.5
 * stays a number.
 */
export const csvText = (sheet: Sheet): string =>
  sheet.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');

function cellText(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const harmless = FORMULA.test(cell) ? `'${cell}` : cell;
  return NEEDS_QUOTES.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
