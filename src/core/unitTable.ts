/**
 * Units a person may type or read, with their SI factors. Inch, foot, mile, ounce and pound-force per
 * square inch as in NIST SP 811, Appendix B (exact or rounded there to seven figures).
 */
export interface Unit {
  readonly symbol: string;
  /** Other spellings accepted when typed; `u` stands for the micro sign. */
  readonly spellings: readonly string[];
  /** SI value of one unit. */
  readonly factor: number;
  /** SI value of zero on the unit's scale; only temperatures have one. */
  readonly zero: number;
}

const unit = (
  symbol: string,
  factor: number,
  spellings: readonly string[] = [],
  zero = 0,
): Unit => ({
  symbol,
  factor,
  spellings,
  zero,
});

const INCH = 0.0254;
const FOOT = 0.3048;

/** First of each kind is the SI unit, taken where nothing else is asked for. */
export const UNITS = {
  length: [
    unit('m', 1),
    unit('cm', 1e-2),
    unit('mm', 1e-3),
    unit('µm', 1e-6, ['um']),
    unit('in', INCH, ['inch', 'inches', '"']),
    unit('ft', FOOT, ['foot', 'feet', "'"]),
  ],
  time: [unit('s', 1, ['sec']), unit('ms', 1e-3), unit('µs', 1e-6, ['us']), unit('ns', 1e-9)],
  rate: [
    unit('/s', 1, ['fps', 'frames/s', 'Hz', '1/s', 'per second']),
    unit('kHz', 1e3, ['kfps', 'k/s']),
  ],
  pixelRate: [
    unit('px/s', 1, ['/s', '1/s']),
    unit('Mpx/s', 1e6, ['MP/s']),
    unit('Gpx/s', 1e9, ['GP/s']),
  ],
  mass: [unit('kg', 1), unit('g', 1e-3), unit('mg', 1e-6), unit('oz', 0.028_349_523_125)],
  speed: [
    unit('m/s', 1),
    unit('ft/s', FOOT, ['fps']),
    unit('km/h', 1 / 3.6, ['kph']),
    unit('mph', (5280 * FOOT) / 3600, ['mi/h']),
  ],
  energy: [unit('J', 1), unit('mJ', 1e-3)],
  momentum: [unit('kg m/s', 1), unit('g m/s', 1e-3)],
  acceleration: [unit('m/s²', 1, ['m/s^2']), unit('km/s²', 1e3, ['km/s^2'])],
  angle: [unit('rad', 1), unit('°', Math.PI / 180, ['deg', 'degrees'])],
  pressure: [
    unit('Pa', 1),
    unit('hPa', 1e2, ['mbar']),
    unit('kPa', 1e3),
    unit('bar', 1e5),
    unit('mmHg', 133.3224, ['torr']),
    unit('psi', 6894.757),
  ],
  temperature: [
    unit('K', 1),
    unit('°C', 1, ['C', 'degC'], 273.15),
    unit('°F', 5 / 9, ['F', 'degF'], (459.67 * 5) / 9),
  ],
  temperatureDifference: [
    unit('K', 1),
    unit('°C', 1, ['C', 'degC']),
    unit('°F', 5 / 9, ['F', 'degF']),
  ],
  pixels: [unit('px', 1, ['pixel', 'pixels'])],
  share: [unit('', 1), unit('%', 1e-2, ['percent'])],
  count: [unit('', 1)],
} as const satisfies Record<string, readonly [Unit, ...Unit[]]>;

export type UnitKind = keyof typeof UNITS;

/** The unit of a kind with this symbol or spelling, or undefined; `mm` and `Mm` differ, so case counts. */
export function findUnit(kind: UnitKind, text: string): Unit | undefined {
  const units: readonly Unit[] = UNITS[kind];
  const micro = (symbol: string) => symbol.replace(/[µμ]/g, 'u');
  const wanted = micro(text);
  return units.find((one) => micro(one.symbol) === wanted || one.spellings.includes(wanted));
}

/** A unit known to exist, for the program's own choices. */
export function unitOf(kind: UnitKind, symbol: string): Unit {
  return findUnit(kind, symbol) ?? UNITS[kind][0];
}

export const toSi = (value: number, from: Unit): number => value * from.factor + from.zero;
export const fromSi = (value: number, to: Unit): number => (value - to.zero) / to.factor;
