import { parseQuantity, type QuantityRule, quantityText } from '../core/quantityText';
import { failure, type Outcome } from '../core/reason';
import type { Language } from './language';

const SIGNS = new Map<Language, string>();

/** What stands before the decimals: a comma in German, Spanish and French. */
function decimalSign(language: Language): string {
  const known = SIGNS.get(language);
  if (known !== undefined) return known;
  const parts = new Intl.NumberFormat(language).formatToParts(1.5);
  const sign = parts.find(({ type }) => type === 'decimal')?.value ?? '.';
  SIGNS.set(language, sign);
  return sign;
}

const DIGITS = String.raw`\d[\d\u202f]*(?:\.\d+)?`;
/** A number or quantity as `core/format` and `quantityText` write it, and nothing else: no file name, no word. */
const QUANTITY = new RegExp(
  String.raw`^\(?[\u2212-]?${DIGITS}(?:e-?\d+)?(?: ± ${DIGITS})?\)?(?: × 10[⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+)?(?:[ \u00a0]\D{1,8})?$`,
);

/**
 * A number or quantity that the core has written, as the language writes it: with its decimal sign. Thousands
 * stay apart by a thin space in every language (ISO 80000-1, 7.3.1), which cannot be taken for a decimal sign.
 * Any other text comes back as it is.
 */
export function inLanguage(text: string, language: Language): string {
  if (!QUANTITY.test(text)) return text;
  return text.replace(/(?<=\d)\.(?=\d)/g, decimalSign(language));
}

/** The text a field shows for an SI value: '1,5 mm' in German. */
export const fieldText = (
  valueSi: number,
  kind: QuantityRule['kind'],
  symbol: string,
  language: Language,
): string => inLanguage(quantityText(valueSi, kind, symbol), language);

/** Digits grouped by points as thousands may be: '1.234', '12.000.000'; no one groups after a leading zero. */
const MAYBE_GROUPED = /(?<![\d.,])[1-9]\d{0,2}(?:\.\d{3})+(?![\d.,])/;

/**
 * Reads what a person typed in a field of the page. Where a comma is the decimal sign: '1,5 mm' and '1.5 mm'
 * are the same; '1.234' may be meant as thousands or as decimals and is refused, as are points and commas in
 * one number. In English commas are refused (`parseQuantity`), for the same reason.
 */
export function readField(text: string, rule: QuantityRule, language: Language): Outcome<number> {
  if (decimalSign(language) === '.') return parseQuantity(text, rule);
  if (MAYBE_GROUPED.test(text) || /\d[.,]\d+[.,]\d/.test(text)) {
    const typed = text.trim();
    return failure(
      'decimalOrThousands',
      `“${typed}” may be read with thousands or with decimals.`,
      'Write decimals with a comma and thousands with a space or nothing: 7,87 or 12 000.',
      { typed },
    );
  }
  return parseQuantity(text.replace(/(?<=\d),(?=\d)|(?<!\S),(?=\d)/g, '.'), rule);
}
