import { expanded, isAvailable, type Reported } from '../core/estimate';
import { formatQuantity, percent } from '../core/format';
import type { Reason } from '../core/reason';
import type { UnitKind } from '../core/unitTable';

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
export const strong = (text: string): Part => ({ text, look: 'strong' });
export const alarm = (text: string): Part => ({ text, look: 'alarm' });

export const line = (...parts: readonly (Part | string)[]): Line => ({
  parts: parts.map((part) => (typeof part === 'string' ? plain(part) : part)),
  missing: false,
});

/** Stands where a number would. */
export const reasonLine = ({ message, remedy }: Reason): Line => ({
  parts: [
    plain(message),
    ...(remedy === undefined ? [] : [{ text: ` ${remedy}`, look: 'remedy' as const }]),
  ],
  missing: true,
});

/** A line without its looks. */
export const lineText = ({ parts }: Line): string => parts.map(({ text }) => text).join('');

/** A number with its expanded uncertainty and coverage, words after it, or why there is none. */
export function reading(reported: Reported, kind: UnitKind, unit: string, after = ''): Line {
  if (!isAvailable(reported)) return reasonLine(reported.unavailable);
  const number = strong(formatQuantity(expanded(reported), kind, unit));
  return line(number, ` (${percent(reported.coverage)})${after}`);
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
