/** One line of the printed table: a figure against its limit. */
export interface ReportRow {
  /** What the figure is of: 'radius 20 px, contrast-to-noise 10'. */
  readonly of: string;
  /** 'RMS over bound', 'bias', 'inside 1 sigma', ... */
  readonly figure: string;
  readonly value: number;
  /** How `value` is printed. */
  readonly unit: '' | 'px' | '%';
  readonly limit: { readonly low?: number; readonly high?: number };
  readonly passed: boolean;
  readonly n: number;
  /** Exact 95 % limits of `value` where it is a share (binomial) or comes from a median (order statistics). */
  readonly limits95?: readonly [low: number, high: number];
  readonly note?: string;
}

/** A plot of the page: d3 draws it to SVG. */
export interface ReportPlot {
  readonly file: string;
  readonly title: string;
  readonly x: { readonly label: string; readonly log?: boolean };
  readonly y: { readonly label: string; readonly log?: boolean };
  readonly series: readonly {
    readonly name: string;
    readonly points: readonly { readonly x: number; readonly y: number; readonly u?: number }[];
  }[];
  /** Horizontal limit lines. */
  readonly limits: readonly number[];
}

export interface ClassReport {
  readonly rows: readonly ReportRow[];
  readonly plots: readonly ReportPlot[];
  /** A paragraph for the page: what was rendered, what the unknowns of the bound are. */
  readonly text: string;
}

/**
 * One class of renders. Its work is cut into chunks of some seconds each, run in several processes and
 * kept on disk, so that a run that was broken off goes on where it stopped. A chunk's record is plain
 * JSON and depends on class, chunk and seed alone.
 */
export interface ValidationClass<Record = unknown> {
  readonly name: string;
  readonly chunks: number;
  run(chunk: number, seed: number): Promise<Record>;
  conclude(records: readonly Record[]): ClassReport;
}
