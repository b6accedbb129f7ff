import { failure, type Outcome, success } from './reason';
import { findUnit, fromSi, toSi, UNITS, type Unit, type UnitKind, unitOf } from './unitTable';

/** What a typed quantity must satisfy; bounds in SI. */
export interface QuantityRule {
  /** Named in messages: 'recording rate'. */
  readonly name: string;
  readonly kind: UnitKind;
  /** Taken where a bare number is typed, and used in messages. */
  readonly unit: string;
  readonly sign: 'positive' | 'nonNegative' | 'any';
  readonly min?: number;
  readonly max?: number;
  readonly whole?: boolean;
}

const NUMBER = String.raw`(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?`;
const QUANTITY = new RegExp(String.raw`^([+-]?${NUMBER})(?:\s*/\s*(${NUMBER}))?\s*(.*)$`);
const SPACES = /[\s\u00a0\u2009\u202f]+/g;

/** '12 000' is one number: spaces between groups of three digits go. */
function normalise(text: string): string {
  return text
    .replace(SPACES, ' ')
    .trim()
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/(?<=\d) (?=\d{3}(?!\d))/g, '');
}

const sentence = (name: string) => name.charAt(0).toUpperCase() + name.slice(1);

/** A number as a person would type it: up to `digits` significant figures, no exponent where it reads well. */
function numberText(value: number, digits = 7): string {
  if (!Number.isFinite(value)) return '';
  const rounded = Number(value.toPrecision(digits));
  const size = Math.abs(rounded); // what is read back must be written as it was
  return size !== 0 && (size < 1e-4 || size >= 1e9)
    ? rounded.toExponential().replace('e+', 'e')
    : String(rounded);
}

/** The text a field shows for an SI value: '200 mm'. */
export function quantityText(valueSi: number, kind: UnitKind, symbol: string): string {
  const unit = unitOf(kind, symbol);
  return `${numberText(fromSi(valueSi, unit))} ${unit.symbol}`.trim();
}

function unitNames(kind: UnitKind): string {
  const units: readonly Unit[] = UNITS[kind];
  return units
    .map((one) => one.symbol)
    .filter((symbol) => symbol !== '')
    .join(', ');
}

/**
 * Reads what a person typed: '200 mm', '7.87 in', '1/50000 s', '12 000', '5e4'. Gives the SI value, or
 * what is wrong with the text. A bare number is in the rule's own unit.
 */
export function parseQuantity(text: string, rule: QuantityRule): Outcome<number> {
  const plain = normalise(text);
  const name = sentence(rule.name);
  const example = `Type a number, with a unit if it is not ${rule.unit === '' ? 'plain' : rule.unit}.`;
  if (plain === '') return failure('empty', `${name} is empty.`, example);
  if (/\d,\d/.test(plain)) {
    return failure(
      'decimalComma',
      `${name} “${text.trim()}” has a comma, which could mean two things.`,
      'Write decimals with a point and thousands with a space or nothing: 7.87, 12 000.',
      { typed: text.trim() },
    );
  }
  const typed = { typed: text.trim() };
  const match = QUANTITY.exec(plain);
  if (match === null)
    return failure('notANumber', `${name} “${text.trim()}” is not a number.`, example, typed);
  const [, numerator = '', denominator, unitText = ''] = match;
  const unit = unitText === '' ? unitOf(rule.kind, rule.unit) : findUnit(rule.kind, unitText);
  if (unit === undefined) {
    const known = unitNames(rule.kind);
    return failure(
      'unknownUnit',
      `${name}: “${unitText}” is not a unit it can be given in.`,
      known === '' ? 'Type the number alone.' : `Use one of: ${known}.`,
      { unit: unitText, known: known === '' ? 'no' : known },
    );
  }
  const ratio = denominator === undefined ? 1 : Number(denominator);
  if (ratio === 0)
    return failure('divisionByZero', `${name} “${text.trim()}” divides by zero.`, example, typed);
  return checkBounds(toSi(Number(numerator) / ratio, unit), rule);
}

function checkBounds(value: number, rule: QuantityRule): Outcome<number> {
  const name = sentence(rule.name);
  const show = (si: number) => quantityText(si, rule.kind, rule.unit);
  if (!Number.isFinite(value)) return failure('tooLarge', `${name} is too large to be a number.`);
  if (rule.sign === 'positive' && value <= 0) {
    return failure(
      'notPositive',
      `${name} must be greater than 0; ${show(value)} is not.`,
      undefined,
      { value: show(value) },
    );
  }
  if (rule.sign === 'nonNegative' && value < 0) {
    return failure('negative', `${name} cannot be negative; ${show(value)} is.`, undefined, {
      value: show(value),
    });
  }
  if (rule.whole === true && !Number.isInteger(value)) {
    return failure('notWhole', `${name} must be a whole number.`);
  }
  const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = rule;
  if (value < min || value > max) {
    const [least, most] = [show(min), show(max)];
    const sides =
      max === Number.POSITIVE_INFINITY
        ? 'least'
        : min === Number.NEGATIVE_INFINITY
          ? 'most'
          : 'both';
    const range = {
      least: `at least ${least}`,
      most: `at most ${most}`,
      both: `between ${least} and ${most}`,
    }[sides];
    return failure('outOfRange', `${name} must be ${range}; ${show(value)} is not.`, undefined, {
      sides,
      least,
      most,
      value: show(value),
    });
  }
  return success(value);
}
