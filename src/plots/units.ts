/** A unit in which axis numbers stay between about 0.1 and 1000. */
export interface ShownUnit {
  readonly symbol: string;
  /** Shown units in one SI unit. */
  readonly perSi: number;
}

const shown = (symbol: string, perSi: number): ShownUnit => ({ symbol, perSi });

/** Unit for an axis that spans so many seconds. */
export function timeUnit(span: number): ShownUnit {
  if (span >= 1) return shown('s', 1);
  return span >= 1e-3 ? shown('ms', 1e3) : shown('µs', 1e6);
}

/** Unit for an axis that spans so many metres; a launcher's lengths read best in millimetres. */
export function lengthUnit(span: number): ShownUnit {
  if (span >= 10) return shown('m', 1);
  return span >= 1e-3 ? shown('mm', 1e3) : shown('µm', 1e6);
}
