import type { Estimate } from './estimate';
import { fromSi, type UnitKind, unitOf } from './unitTable';

/** Shown where a number that is no number would have been printed. */
export const NO_VALUE = 'no value';

const MINUS = '\u2212';
const THIN_SPACE = '\u202f';
const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';
/** Beyond these powers of ten the common exponent is written out. */
const LARGEST_PLAIN = 6;
const SMALLEST_PLAIN = -5;
/** Figures shown where no uncertainty says how many matter. */
const EXACT_FIGURES = 6;

export interface QuantityParts {
  readonly value: string;
  /** Empty where the uncertainty is zero. */
  readonly u: string;
  /** '' or ' × 10⁻⁷'. */
  readonly exponent: string;
}

const exponentOf = (x: number) => (x === 0 ? 0 : Math.floor(Math.log10(Math.abs(x)) + 1e-12));

const superscript = (n: number) =>
  (n < 0 ? '⁻' : '') +
  String(Math.abs(n))
    .split('')
    .map((digit) => SUPERSCRIPTS.charAt(Number(digit)))
    .join('');

/** Rounded to `place` (power of ten of the last figure), grouped by thousands from five figures on. */
function atPlace(x: number, place: number): string {
  const step = 10 ** place;
  const rounded = place > 0 ? Math.round(x / step) * step : x;
  const fixed = Math.abs(rounded).toFixed(Math.max(0, -place));
  const [whole = '0', decimals] = fixed.split('.');
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, THIN_SPACE) : whole;
  const text = decimals === undefined ? grouped : `${grouped}.${decimals}`;
  return x < 0 && /[1-9]/.test(fixed) ? MINUS + text : text;
}

/** Place of the second figure of an uncertainty above 0, after it is rounded: 0.0995 becomes 0.10, place -2. */
export function placeOf(u: number): number {
  return Number(u.toExponential(1).split('e')[1]) - 1;
}

/**
 * The usual rule for stating a result (JCGM 100:2008, 7.2.6): the uncertainty to two significant figures,
 * the value to the same place. Null where either is no number.
 */
export function quantityParts({ value, u }: Estimate): QuantityParts | null {
  if (!Number.isFinite(value) || !Number.isFinite(u)) return null;
  const size = Math.abs(u);
  const place = size > 0 ? placeOf(size) : Math.min(0, exponentOf(value) - EXACT_FIGURES + 1);
  const top = Math.max(exponentOf(value), size > 0 ? place + 1 : 0);
  const shift = top >= LARGEST_PLAIN || (value !== 0 && top < SMALLEST_PLAIN) ? top : 0;
  const scale = 10 ** shift;
  const exact = (x: number) => trimmed(atPlace(x / scale, place - shift));
  return {
    value: size > 0 ? atPlace(value / scale, place - shift) : exact(value),
    u: size > 0 ? atPlace(size / scale, place - shift) : '',
    exponent: shift === 0 ? '' : ` × 10${superscript(shift)}`,
  };
}

/** Trailing zeros after the point mean nothing where no uncertainty is stated. */
const trimmed = (text: string) => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);

/**
 * '181.34 ± 0.42 m/s'; the estimate is in SI, shown in the unit asked for. Without `withU` the uncertainty
 * only sets the place: '181.34 m/s'.
 */
export function formatQuantity(
  estimate: Estimate,
  kind: UnitKind,
  symbol: string,
  withU = true,
): string {
  const unit = unitOf(kind, symbol);
  const parts = quantityParts({
    value: fromSi(estimate.value, unit),
    u: estimate.u / unit.factor,
  });
  if (parts === null) return NO_VALUE;
  const { value, u, exponent } = parts;
  const stated = withU && u !== '';
  const numbers = stated ? `${value} ± ${u}` : value;
  const scaled = exponent === '' || !stated ? numbers : `(${numbers})`;
  return inUnit(`${scaled}${exponent}`, unit.symbol);
}

/** A space before the unit, but for the degree of an angle (BIPM, SI Brochure, 5.4.3). */
const inUnit = (numbers: string, symbol: string): string =>
  `${numbers}${symbol === '°' ? '' : ' '}${symbol}`.trim();

/** Powers of ten between which a number is written out. */
export interface PlainRange {
  readonly smallest: number;
  /** From this on it is not. */
  readonly largest: number;
}

const PLAIN: PlainRange = { smallest: SMALLEST_PLAIN, largest: LARGEST_PLAIN };
/** Where hardly a figure is a filling zero. */
const SHORT: PlainRange = { smallest: -2, largest: 4 };

/** A number without its own uncertainty, to so many significant figures. */
export function formatNumber(x: number, figures = 4, { smallest, largest } = PLAIN): string {
  if (!Number.isFinite(x)) return NO_VALUE;
  const rounded = Number(x.toPrecision(figures));
  const exponent = exponentOf(rounded);
  if (exponent >= largest || (rounded !== 0 && exponent < smallest)) {
    return `${atPlace(rounded / 10 ** exponent, 1 - figures)} × 10${superscript(exponent)}`;
  }
  return atPlace(rounded, Math.min(0, exponent - figures + 1));
}

/** The same for a column of numbers of all sizes: a power of ten instead of filling zeros ('1.23 × 10⁻⁵'). */
export const shortNumber = (x: number, figures: number): string => formatNumber(x, figures, SHORT);

/** Up to so many significant figures, no trailing zeros: '12 000', '0.2353'. */
export const numberAt = (x: number, figures: number): string => {
  const text = formatNumber(x, figures);
  return text.includes('×') ? text : trimmed(text);
};

/** A whole number, grouped: '12 000'. */
export const formatCount = (n: number): string => (Number.isFinite(n) ? atPlace(n, 0) : NO_VALUE);

/** Value and interval bounds at the place the uncertainty sets: '181.34', ['180.51', '182.17']. */
export function formatInterval(
  interval: readonly [number, number],
  u: number,
  kind: UnitKind,
  symbol: string,
): string {
  const unit = unitOf(kind, symbol);
  const [low, high] = [fromSi(interval[0], unit), fromSi(interval[1], unit)];
  if (!Number.isFinite(low) || !Number.isFinite(high)) return NO_VALUE;
  const size = Math.abs(u) / unit.factor;
  const place = Number.isFinite(size) && size > 0 ? placeOf(size) : -3;
  return inUnit(`${atPlace(low, place)} to ${atPlace(high, place)}`, unit.symbol);
}

/** A share in percent: '95 %'. */
export const percent = (share: number): string => `${numberAt(share * 100, 4)}\u00a0%`;
