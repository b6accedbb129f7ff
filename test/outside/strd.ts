import { readFileSync } from 'node:fs';

/** A data set of the NIST StRD with its certified values, read from the published file. */
export interface ReferenceSet {
  /** Starts of a nonlinear set; empty for a linear one. */
  readonly starts: readonly Float64Array[];
  readonly certified: Float64Array;
  readonly standardDeviations: Float64Array;
  readonly residualDeviation: number;
  readonly y: Float64Array;
  /** Predictors, one array each. */
  readonly x: readonly Float64Array[];
}

const NUMBER = /[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/g;
const numbers = (line: string): number[] => (line.match(NUMBER) ?? []).map(Number);

/** Misprints of the copies, set right here so that the files stay as they came: see data/strd/README.md. */
const MISPRINTS: Record<string, readonly [printed: string, meant: string]> = {
  Roszman1: ['1.20196866396E-0', '2.0196866396E-01'],
};

export function referenceSet(name: string): ReferenceSet {
  const [printed, meant] = MISPRINTS[name] ?? ['', ''];
  const lines = readFileSync(new URL(`data/strd/${name}.dat`, import.meta.url), 'utf8')
    .replace(printed, meant)
    .split(/\r?\n/);
  const parameterLines = lines.filter((line) => /^\s*(b\d+\s*=|B\d+\s+[-\d])/.test(line));
  const table = parameterLines.map((line) => numbers(line.replace(/^\s*[bB]\d+\s*=?/, '')));
  const column = (index: number) => Float64Array.from(table, (row) => row.at(index) as number);
  const starts = (table[0]?.length ?? 0) > 2 ? [column(0), column(1)] : [];
  const residualLine = lines.findIndex((line) =>
    /^\s*(Residual )?Standard Deviation:?\s+[\d.]/.test(line),
  );
  const dataLine = lines.findLastIndex((line) => /^Data:/.test(line));
  const rows = lines
    .slice(dataLine + 1)
    .map(numbers)
    .filter((row) => row.length > 1);
  return {
    starts,
    certified: column(-2),
    standardDeviations: column(-1),
    residualDeviation: numbers(lines[residualLine] ?? '')[0] as number,
    y: Float64Array.from(rows, (row) => row[0] as number),
    x: Array.from({ length: (rows[0]?.length ?? 1) - 1 }, (_, k) =>
      Float64Array.from(rows, (row) => row[k + 1] as number),
    ),
  };
}

/** Log relative error: about how many decimal digits agree (NIST StRD's own measure). */
export const digits = (found: number, certified: number): number =>
  -Math.log10(Math.max(1e-16, certified === 0 ? Math.abs(found) : Math.abs(found / certified - 1)));
