import {
  formatCount,
  formatInterval,
  formatNumber,
  formatQuantity,
  numberAt,
  percent,
  shortNumber,
} from '../core/format';
import { inLanguage } from './numbers';
import { language, t } from './text';

/** English as most of the world writes its dates: the day first. */
const DATES = { en: 'en-GB', de: 'de', es: 'es', fr: 'fr' } as const;

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

/** From one number to another; words of the language stand between them. */
export function showInterval(...of: Parameters<typeof formatInterval>): string {
  const [low = '', high] = formatInterval(...of).split(' to ');
  return high === undefined ? low : showRange(low, high);
}

/** The same of two numbers as `core/format` writes them. */
export const showRange = (low: string, high: string): string =>
  t('report.interval', { low: showAs(low), high: showAs(high) });

/** Several things in a row, apart as the language has it: 'a, b, c'. */
export const showList = (items: readonly string[]): string =>
  new Intl.ListFormat(language.value, { type: 'unit' }).format(items);

/** A day: 17 April 2031. */
export const showDate = (day: Date): string =>
  new Intl.DateTimeFormat(DATES[language.value], { dateStyle: 'long' }).format(day);

/** A moment: the day with its time. */
export const showMoment = (moment: Date): string =>
  new Intl.DateTimeFormat(DATES[language.value], { dateStyle: 'long', timeStyle: 'short' }).format(
    moment,
  );
