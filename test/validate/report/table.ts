import type { ClassReport, ReportRow } from '../types';

export interface NamedReport {
  readonly name: string;
  readonly report: ClassReport;
}

/** A number with enough digits for its unit. */
function valueText(value: number, unit: ReportRow['unit']): string {
  if (unit === '%') {
    // Small figures keep two digits.
    return `${value !== 0 && Math.abs(value) < 1 ? value.toPrecision(2) : value.toFixed(1)} %`;
  }
  if (unit === 'px') return `${value.toFixed(value < 0.1 ? 4 : 3)} px`;
  // A figure that two decimals would round to nothing keeps two digits.
  return value !== 0 && Math.abs(value) < 0.005 ? value.toExponential(1) : value.toFixed(2);
}

function limitText({ limit: { low, high }, unit }: ReportRow): string {
  const text = (value: number) => (unit === '' ? String(value) : valueText(value, unit));
  if (low !== undefined && high !== undefined) {
    return unit === '%' ? `${low} to ${high} %` : `${text(low)} to ${text(high)}`;
  }
  if (low !== undefined) return `≥ ${text(low)}`;
  return high === undefined ? '' : `≤ ${text(high)}`;
}

const limitsText = ({ limits95, unit }: ReportRow): string => {
  if (limits95 === undefined) return '';
  const [low, high] = limits95;
  return unit === '%'
    ? `${low.toFixed(1)} to ${high.toFixed(1)} %`
    : `${low.toFixed(2)} to ${high.toFixed(2)}`;
};

/** 'pass' or 'FAIL'; nothing for a figure without a limit. */
function verdict({ passed, limit }: ReportRow): string {
  if (limit.low === undefined && limit.high === undefined) return passed ? '' : 'FAIL';
  return passed ? 'pass' : 'FAIL';
}

export const CELLS = ['of', 'figure', 'value', 'limit', 'n', '95 % limits', ''] as const;

export const cellsOf = (row: ReportRow): string[] => [
  row.of,
  row.figure,
  valueText(row.value, row.unit) + (row.note === undefined ? '' : ` (${row.note})`),
  limitText(row),
  String(row.n),
  limitsText(row),
  verdict(row),
];

/** The table as plain text. */
export function printTable(reports: readonly NamedReport[], subject: string, seed: number): string {
  const lines = reports.flatMap(({ name, report }) =>
    report.rows.map((row) => [name, ...cellsOf(row)]),
  );
  const table = [['class', ...CELLS], ...lines];
  const widths = table.reduce(
    (most, cells) => cells.map((cell, i) => Math.max(most[i] ?? 0, cell.length)),
    [] as number[],
  );
  const rows = reports.flatMap(({ report }) => report.rows);
  const failed = rows.filter(({ passed }) => !passed).length;
  return [
    `Validation of the ${subject}, seed ${seed}`,
    ...table.map((cells) =>
      cells
        .map((cell, i) => cell.padEnd(widths[i] ?? 0))
        .join('  ')
        .trimEnd(),
    ),
    failed === 0 ? `All ${rows.length} rows pass.` : `${failed} of ${rows.length} rows fail.`,
    '',
  ].join('\n');
}
