import { expanded, isAvailable, type Reported } from '../core/estimate';
import type { Reason } from '../core/reason';
import type { UnitKind } from '../core/unitTable';
import type { TextKey } from '../text/catalogue';
import { reasonWords } from '../text/reasonWords';
import { showPercent, showQuantity } from '../text/show';
import { tMarked } from '../text/text';

/** A piece of a sentence. `remedy`: what to do about it; `alarm`: must not be overlooked. */
export interface Part {
  readonly text: string;
  readonly look: 'plain' | 'strong' | 'alarm' | 'remedy';
}

/** A sentence or two. `missing`: they say why there is no number. */
export interface Line {
  readonly parts: readonly Part[];
  readonly missing: boolean;
}

const plain = (text: string): Part => ({ text, look: 'plain' });
const MARKS: Readonly<Record<string, (text: string) => Part>> = {
  strong: (text) => ({ text, look: 'strong' }),
  alarm: (text) => ({ text, look: 'alarm' }),
};

/** A text of the page with its parts in <strong> and <alarm>. */
export const line = (
  key: TextKey,
  values: Readonly<Record<string, string | number>> = {},
): Line => ({
  parts: tMarked(key, values, MARKS).map((part) => (typeof part === 'string' ? plain(part) : part)),
  missing: false,
});

/** Stands where a number would. */
export function reasonLine(reason: Reason): Line {
  const { message, remedy } = reasonWords(reason);
  return {
    parts: [
      plain(message),
      ...(remedy === undefined ? [] : [{ text: ` ${remedy}`, look: 'remedy' as const }]),
    ],
    missing: true,
  };
}

/** A line without its looks. */
export const lineText = ({ parts }: Line): string => parts.map(({ text }) => text).join('');

/** A number with its expanded uncertainty and coverage, or why there is none; `key` puts them into other words. */
export function reading(
  reported: Reported,
  kind: UnitKind,
  unit: string,
  key: TextKey = 'report.findings.reading',
  values: Readonly<Record<string, string>> = {},
): Line {
  if (!isAvailable(reported)) return reasonLine(reported.unavailable);
  const value = showQuantity(expanded(reported), kind, unit);
  return line(key, { ...values, value, coverage: showPercent(reported.coverage) });
}

/** From here on a time is stated in milliseconds, s. */
const LONG_S = 0.001;

/** Unit a time, or a difference of times, of this size is stated in. */
export const timeSymbol = (size: number): 'µs' | 'ms' => (Math.abs(size) < LONG_S ? 'µs' : 'ms');

/** Something the film tells, under its name. */
export interface Finding {
  readonly name: string;
  /** Stable, for tests and styles. */
  readonly mark: string;
  readonly lines: readonly Line[];
}
