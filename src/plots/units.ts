/** A unit in which axis numbers stay between about 0.1 and 1000. */
export interface ShownUnit {
  readonly symbol: string;
  /** Shown units in one SI unit. */
  readonly perSi: number;
}

const shown = (symbol: string, perSi: number): ShownUnit => ({ symbol, perSi });

const TIMES = [shown('s', 1), shown('ms', 1e3), shown('µs', 1e6)] as const;
const LENGTHS = [shown('m', 1), shown('mm', 1e3), shown('µm', 1e6)] as const;

/** The first unit in which a span is at least `least`; the smallest where none is. */
function fitting(units: readonly [ShownUnit, ...ShownUnit[]], span: number, least: number) {
  return units.find(({ perSi }) => span * perSi >= least) ?? units.at(-1) ?? units[0];
}

/** Unit for an axis that spans so many seconds. */
export const timeUnit = (span: number): ShownUnit => fitting(TIMES, span, 1);

/** Unit for an axis that spans so many metres; a launcher's lengths read best in millimetres. */
export const lengthUnit = (span: number): ShownUnit => fitting(LENGTHS, span, span > 10 ? 1 : 10);
