import {
  formatCount,
  formatNumber,
  formatQuantity,
  numberAt,
  percent,
  shortNumber,
} from '../core/format';
import { inLanguage } from './numbers';
import { language } from './text';

/** Numbers of the page in its language; each is its namesake of `core/format`, which writes files and English. */
const shown =
  <Arguments extends readonly unknown[]>(write: (...values: Arguments) => string) =>
  (...values: Arguments): string =>
    inLanguage(write(...values), language.value);

export const showQuantity = shown(formatQuantity);
export const showNumber = shown(formatNumber);
export const showNumberAt = shown(numberAt);
export const showShortNumber = shown(shortNumber);
export const showCount = shown(formatCount);
export const showPercent = shown(percent);
/** To so many decimals. */
export const showFixed = shown((x: number, decimals: number) => x.toFixed(decimals));
/** A text of the program's own that is a number or quantity: '1.2 m' beside an empty field. */
export const showAs = shown((text: string) => text);

/** Several things in a row, apart as the language has it: 'a, b, c'. */
export const showList = (items: readonly string[]): string =>
  new Intl.ListFormat(language.value, { type: 'unit' }).format(items);
