import type { StepName } from '../../app/draft';
import type { OwnNumber } from '../../app/ownNumbers';
import type { Estimate } from '../../core/estimate';
import type { UnitKind } from '../../core/unitTable';
import { showCount, showQuantity } from '../../text/show';

/** How a number is written in a formula: its letter with what stands below, and its unit. */
interface Look {
  readonly letter: string;
  readonly below?: string;
  readonly kind: UnitKind | 'area';
  /** The symbol of its unit, by its size where that runs over powers of ten. */
  readonly unit: string | ((size: number) => string);
  /** The step that gives it. */
  readonly from: StepName;
}

const short = (seconds: number): string => (seconds < 1e-3 ? 'µs' : seconds < 1 ? 'ms' : 's');

const time = (letter: string, from: StepName, below?: string): Look => ({
  letter,
  ...(below === undefined ? {} : { below }),
  ...{ kind: 'time', unit: short, from },
});
const instant = (letter: string, from: StepName, below: string): Look => ({
  ...time(letter, from, below),
  unit: 'ms',
});
const length = (letter: string, unit: string, from: StepName, below?: string): Look => ({
  letter,
  ...(below === undefined ? {} : { below }),
  ...{ kind: 'length', unit, from },
});
const speed = (letter: string, from: StepName, below?: string): Look => ({
  letter,
  ...(below === undefined ? {} : { below }),
  ...{ kind: 'speed', unit: 'm/s', from },
});

export const SYMBOLS: Readonly<Record<OwnNumber, Look>> = {
  frames: { letter: 'N', kind: 'count', unit: '', from: 'footage' },
  interval: time('Δt', 'clock'),
  duration: time('T', 'clock'),
  rate: { letter: 'f', kind: 'rate', unit: '/s', from: 'clock' },
  length: length('L', 'mm', 'scale'),
  lengthPixels: { letter: 'p', kind: 'pixels', unit: 'px', from: 'scale' },
  depth: length('z', 'mm', 'scale'),
  cameraDistance: length('D', 'm', 'scale'),
  oneScale: length('k', 'mm', 'scale'),
  perPixel: length('k', 'mm', 'scale'),
  centrePixels: { letter: 'd', kind: 'pixels', unit: 'px', from: 'ball' },
  centre: length('s', 'mm', 'ball'),
  exposure: time('t', 'clock', 'x'),
  blur: { letter: 'b', kind: 'pixels', unit: 'px', from: 'ball' },
  exitTime: instant('t', 'result', 'e'),
  burstTime: instant('t', 'seal', 's'),
  lead: time('q', 'result'),
  startPlace: length('s', 'mm', 'ball', '1'),
  endPlace: length('s', 'mm', 'ball', '2'),
  startTime: instant('t', 'ball', '1'),
  endTime: instant('t', 'ball', '2'),
  meanSpeed: speed('v', 'ball', 'm'),
  exitVelocity: speed('v', 'result'),
  pressure: { letter: 'p', kind: 'pressure', unit: 'kPa', from: 'ball' },
  mass: { letter: 'm', kind: 'mass', unit: 'g', from: 'ball' },
  barrel: length('L', 'm', 'models'),
  boreArea: { letter: 'A', kind: 'area', unit: 'mm²', from: 'models' },
  mostSpeed: speed('v', 'models', '0'),
};

/** Scales are lengths per pixel. */
const PER_PIXEL: ReadonlySet<OwnNumber> = new Set(['oneScale', 'perPixel']);

/** The number with its unit; its uncertainty beside it, or only in where it is rounded. */
export function numberText(name: OwnNumber, estimate: Estimate, withU: boolean): string {
  const { kind, unit } = SYMBOLS[name];
  if (kind === 'count') return showCount(estimate.value);
  if (kind === 'area') {
    const inMm2 = { value: estimate.value * 1e6, u: estimate.u * 1e6 };
    return `${showQuantity(inMm2, 'count', '', withU)} mm²`;
  }
  const symbol = typeof unit === 'string' ? unit : unit(Math.abs(estimate.value));
  const text = showQuantity(estimate, kind, symbol, withU);
  return PER_PIXEL.has(name) ? `${text}/px` : text;
}

/** What stands below a letter, where text has no place below. */
const LOW: Readonly<Record<string, string>> = {
  0: '₀',
  1: '₁',
  2: '₂',
  e: 'ₑ',
  m: 'ₘ',
  s: 'ₛ',
  x: 'ₓ',
};

export function letterText(name: OwnNumber): string {
  const { letter, below } = SYMBOLS[name];
  return below === undefined ? letter : `${letter}${LOW[below] ?? below}`;
}
