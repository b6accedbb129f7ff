import type { ReasonValues } from '../core/reason';
import { chiSquareCdf, normalQuantile } from '../core/statistics';

export interface ResidualCheck {
  readonly code: 'chiSquare' | 'runs' | 'serialCorrelation';
  readonly passed: boolean;
  /** One plain sentence. */
  readonly message: string;
  /** What to do about a check that failed; null where there is nothing to do. */
  readonly remedy: string | null;
  /** What stands in it, for those who say it in another language; `form` tells the sentences of one code apart. */
  readonly values: ReasonValues;
}

/** Chance of a false alarm of each check. */
export const SIGNIFICANCE = 0.01;
const LIMIT = normalQuantile(1 - SIGNIFICANCE / 2);

/** How far the scatter about the curve is what the stated uncertainties lead to expect. */
export function chiSquareCheck(chiSquare: number, dof: number): ResidualCheck {
  const code = 'chiSquare';
  if (dof < 1) {
    return passes(code, 'No frame is left over to check the scatter with.', {
      form: 'none',
      ratio: '',
    });
  }
  const below = chiSquareCdf(chiSquare, dof);
  const ratio = Math.sqrt(chiSquare / dof).toFixed(2);
  if (below > 1 - SIGNIFICANCE / 2) {
    return {
      code,
      passed: false,
      message: `The centres scatter ${ratio} times as much about the curve as their stated uncertainty allows.`,
      remedy:
        'Look at the residuals for a pattern, reject frames with a disturbed outline, or check the clock.',
      values: { form: 'more', ratio },
    };
  }
  if (below < SIGNIFICANCE / 2) {
    return {
      code,
      passed: false,
      message: `The centres scatter only ${ratio} times their stated uncertainty about the curve: it is stated too large.`,
      remedy: null,
      values: { form: 'less', ratio },
    };
  }
  return passes(
    code,
    `The centres scatter about the curve as their uncertainty leads to expect (${ratio} times it).`,
    { form: 'as', ratio },
  );
}

const passes = (
  code: ResidualCheck['code'],
  message: string,
  values: ReasonValues,
): ResidualCheck => ({ code, passed: true, message, remedy: null, values });

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
    return passes(code, 'Too few frames to check the residuals for a pattern.', {
      form: 'tooFew',
    });
  }
  const expected = 1 + (2 * above * below) / n;
  const variance = ((expected - 1) * (expected - 2)) / (n - 1);
  const z = (runs - expected) / Math.sqrt(variance);
  if (Math.abs(z) < LIMIT) {
    return passes(code, 'The residuals change sign as often as chance would have it.', {
      form: 'chance',
    });
  }
  return z < 0
    ? {
        code,
        passed: false,
        message:
          'The residuals keep their sign over long stretches: the curve does not follow the path.',
        remedy: 'Choose the automatic model, check the lens, or fit a shorter stretch.',
        values: { form: 'long' },
      }
    : {
        code,
        passed: false,
        message:
          'The residuals alternate in sign more than chance would have it: neighbouring frames are not independent.',
        remedy:
          'Check whether the footage is interlaced or holds frames made from their neighbours.',
        values: { form: 'alternating' },
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
    return passes(code, 'Too few frames to check neighbours for correlation.', {
      form: 'tooFew',
      by: '',
    });
  }
  const correlation = products / squares;
  // Mean -1/n and variance about 1/n for residuals of independent observations.
  const passed = Math.abs(correlation + 1 / n) < LIMIT / Math.sqrt(n);
  const by = correlation.toFixed(2).replace('-', '\u2212');
  const said = by.replace('-', '\u2212');
  if (passed) {
    return passes(code, `Neighbouring residuals are not correlated (${by}).`, {
      form: 'not',
      by: said,
    });
  }
  return {
    code,
    passed,
    message: `Neighbouring residuals are correlated (${by}): the fit's own uncertainty is then stated too small.`,
    remedy: 'Choose the automatic model, and look whether something moves with the ball.',
    values: { form: 'correlated', by: said },
  };
}
