import { medianInPlace } from './median';

/** Values farther from the median than this many median, then standard deviations and a step of grey are something passing by. */
const CUT_DEVIATIONS = 4.4;
const CUT_SIGMAS = 3;
const LEAST_TOLERANCE = 1;
/** Of the variance of normal noise this share is left by such a cut. */
const KEPT_VARIANCE = 0.985;
/** Whole values that spread over fewer steps than this are counted instead of sorted: the same answer several times as fast. */
const MOST_STEPS = 64;

/**
 * What one pixel shows over time while nothing passes it: the median, then the mean and variance of the values that
 * agree with it. Most of a background's time is spent here: nothing is allocated.
 */
export class StillLevel {
  level = 0;
  variance = 0;
  /** Values that agree with the median. */
  agreeing = 0;
  /** To be filled before `estimate`. */
  readonly values: Float64Array;
  private readonly scratch: Float64Array;
  private readonly counts = new Uint16Array(MOST_STEPS);
  private readonly deviations = new Uint16Array(2 * MOST_STEPS);
  private agree = 0;
  private sum = 0;
  private squares = 0;

  constructor(most: number) {
    this.values = new Float64Array(most);
    this.scratch = new Float64Array(most);
  }

  /** Estimates from the first `n` values; `isWhole`: they are whole numbers. */
  estimate(n: number, isWhole: boolean): void {
    const { values } = this;
    if (!isWhole) {
      this.bySorting(n);
      return;
    }
    let low = values[0] as number;
    let high = low;
    for (let k = 1; k < n; k++) {
      const value = values[k] as number;
      if (value < low) low = value;
      else if (value > high) high = value;
    }
    if (high - low < MOST_STEPS) this.byCounting(n, low, high - low + 1);
    else this.bySorting(n);
  }

  private bySorting(n: number): void {
    const { values, scratch } = this;
    scratch.set(values);
    const middle = medianInPlace(scratch, n);
    for (let k = 0; k < n; k++) scratch[k] = Math.abs((values[k] as number) - middle);
    let tolerance = firstTolerance(medianInPlace(scratch, n));
    for (let round = 0; round < 2; round++) {
      this.clear();
      for (let k = 0; k < n; k++) this.add((values[k] as number) - middle, 1, tolerance);
      tolerance = this.conclude(middle);
    }
  }

  private byCounting(n: number, low: number, steps: number): void {
    const { values, counts, deviations } = this;
    counts.fill(0, 0, steps);
    for (let k = 0; k < n; k++) {
      const at = (values[k] as number) - low;
      counts[at] = (counts[at] as number) + 1;
    }
    const twiceMiddle = twiceMedian(counts, n);
    deviations.fill(0, 0, 2 * steps);
    for (let at = 0; at < steps; at++) {
      const twice = Math.abs(2 * at - twiceMiddle);
      deviations[twice] = (deviations[twice] as number) + (counts[at] as number);
    }
    const middle = twiceMiddle / 2;
    let tolerance = firstTolerance(twiceMedian(deviations, n) / 4);
    for (let round = 0; round < 2; round++) {
      this.clear();
      for (let at = 0; at < steps; at++) this.add(at - middle, counts[at] as number, tolerance);
      tolerance = this.conclude(low + middle);
    }
  }

  private clear(): void {
    this.agree = 0;
    this.sum = 0;
    this.squares = 0;
  }

  /** Counts a deviation from the middle that occurs so many times. */
  private add(deviation: number, times: number, tolerance: number): void {
    if (deviation > tolerance || deviation < -tolerance) return;
    this.agree += times;
    this.sum += times * deviation;
    this.squares += times * deviation * deviation;
  }

  /** Takes what was counted as the estimate; gives how far values may lie next. */
  private conclude(middle: number): number {
    const { agree, sum, squares } = this;
    const mean = sum / agree;
    this.level = middle + mean;
    this.agreeing = agree;
    this.variance = agree > 1 ? (squares - agree * mean * mean) / (agree - 1) / KEPT_VARIANCE : 0;
    return LEAST_TOLERANCE + CUT_SIGMAS * Math.sqrt(this.variance);
  }
}

/** Deviations of whole numbers are coarse: what this leaves says better how far values may lie. */
const firstTolerance = (typical: number): number => LEAST_TOLERANCE + CUT_DEVIATIONS * typical;

/** Twice the median of n whole numbers from 0, counted; of an even number the middle two are averaged. */
function twiceMedian(counts: Uint16Array, n: number): number {
  const upper = n >> 1;
  const lower = n % 2 === 1 ? upper : upper - 1;
  let at = 0;
  let reached = counts[0] as number;
  while (reached <= lower) reached += counts[++at] as number;
  const first = at;
  while (reached <= upper) reached += counts[++at] as number;
  return first + at;
}
