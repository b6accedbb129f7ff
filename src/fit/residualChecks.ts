import { chiSquareCdf, normalQuantile } from '../core/statistics';

export interface ResidualCheck {
  readonly code: 'chiSquare' | 'runs' | 'serialCorrelation';
  readonly passed: boolean;
  /** One plain sentence. */
  readonly message: string;
}

/** Chance of a false alarm of each check. */
const SIGNIFICANCE = 0.01;
const LIMIT = normalQuantile(1 - SIGNIFICANCE / 2);

/** How far the scatter about the curve is what the stated uncertainties lead to expect. */
export function chiSquareCheck(chiSquare: number, dof: number): ResidualCheck {
  const code = 'chiSquare';
  if (dof < 1) {
    return { code, passed: true, message: 'No frame is left over to check the scatter with.' };
  }
  const below = chiSquareCdf(chiSquare, dof);
  const ratio = Math.sqrt(chiSquare / dof).toFixed(2);
  if (below > 1 - SIGNIFICANCE / 2) {
    return {
      code,
      passed: false,
      message: `The centres scatter ${ratio} times as much about the curve as their stated uncertainty allows.`,
    };
  }
  if (below < SIGNIFICANCE / 2) {
    return {
      code,
      passed: false,
      message: `The centres scatter only ${ratio} times their stated uncertainty about the curve: it is stated too large.`,
    };
  }
  return {
    code,
    passed: true,
    message: `The centres scatter about the curve as their uncertainty leads to expect (${ratio} times it).`,
  };
}

/** Wald and Wolfowitz's runs test: whether the signs of the residuals follow in runs longer or shorter than chance. */
export function runsCheck(residuals: ArrayLike<number>): ResidualCheck {
  const code = 'runs';
  let above = 0;
  let below = 0;
  let runs = 0;
  let last = 0;
  for (let i = 0; i < residuals.length; i++) {
    const sign = Math.sign(residuals[i] as number);
    if (sign === 0) continue;
    if (sign > 0) above++;
    else below++;
    if (sign !== last) runs++;
    last = sign;
  }
  const n = above + below;
  if (above < 4 || below < 4) {
    return { code, passed: true, message: 'Too few frames to check the residuals for a pattern.' };
  }
  const expected = 1 + (2 * above * below) / n;
  const variance = ((expected - 1) * (expected - 2)) / (n - 1);
  const z = (runs - expected) / Math.sqrt(variance);
  const passed = Math.abs(z) < LIMIT;
  return {
    code,
    passed,
    message: passed
      ? 'The residuals change sign as often as chance would have it.'
      : z < 0
        ? 'The residuals keep their sign over long stretches: the curve does not follow the path.'
        : 'The residuals alternate in sign more than chance would have it: neighbouring frames are not independent.',
  };
}

/** Lag-1 correlation of the residuals in time order. */
export function serialCorrelationCheck(residuals: ArrayLike<number>): ResidualCheck {
  const code = 'serialCorrelation';
  const n = residuals.length;
  let products = 0;
  let squares = 0;
  for (let i = 0; i < n; i++) {
    const r = residuals[i] as number;
    squares += r * r;
    if (i > 0) products += r * (residuals[i - 1] as number);
  }
  if (n < 8 || squares === 0) {
    return { code, passed: true, message: 'Too few frames to check neighbours for correlation.' };
  }
  const correlation = products / squares;
  // Mean -1/n and variance about 1/n for residuals of independent observations.
  const passed = Math.abs(correlation + 1 / n) < LIMIT / Math.sqrt(n);
  return {
    code,
    passed,
    message: passed
      ? `Neighbouring residuals are not correlated (${correlation.toFixed(2)}).`
      : `Neighbouring residuals are correlated (${correlation.toFixed(2)}): the fit's own uncertainty is then stated too small.`,
  };
}
