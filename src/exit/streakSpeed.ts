import type { Estimate } from '../core/estimate';
import { quantity } from '../core/quantity';
import { failure, type Outcome, success } from '../core/reason';
import { chiSquareCdf, coverageFactor } from '../core/statistics';
import type { Pixels, Seconds } from '../core/units';
import { fitLinear } from '../fit/linear';
import { fitRobustly } from '../fit/robust';
import type { BudgetEntry, StreakReport, Warning } from '../shot/result';
import { combine, entry } from '../uncertainty/budget';
import { nominalSetting, type Setting } from './flight';
import { type SharedInput, sharedInputs, shifted } from './inputs';
import type { FittedPath, SharedInputs } from './types';

/** How far one frame's blur says the ball moved while the shutter was open. */
export interface BlurLength {
  readonly frame: number;
  /** Middle of the exposure. */
  readonly time: Seconds;
  /** In the pixels that `metresPerPixel` is of, with the standard uncertainty that is this frame's own. */
  readonly length: Pixels;
  readonly u: Pixels;
  /** How far the centre moves for one standard uncertainty of each shift source; left out: none. */
  readonly shifts?: readonly Pixels[];
  /** Distance of the centre along the axis. */
  readonly along: Pixels;
}

export interface StreakInputs {
  readonly lengths: readonly BlurLength[];
  /** s */
  readonly exposure: Estimate;
  /** Lines that are read while the readout goes one pixel along the flight; 0 across it. */
  readonly linesPerPixel: number;
  readonly shared: SharedInputs;
  /** The fit it is compared with. */
  readonly path: FittedPath;
  readonly coverage: number;
}

const FEWEST_FRAMES = 3;
/** Tukey weight under which a frame is left out. */
const OUTLIER_WEIGHT = 0.04;
/** The blur tells the speed only where its length is known better than this. */
const MOST_RELATIVE_U = 0.2;
/** Scatter is called larger than stated where chance would give it less often than this. */
const SIGNIFICANCE = 0.05;
/** Blur and fit disagree where chance would have them so far apart less often than this. */
const RARE = 0.01;
/** What the model of the edge leaves in a length, common to all frames, px (from renders). */
const LENGTH_MODEL_U = 0.05;

/**
 * The speed from the motion blur alone: its length over the exposure, weighted over the frames, next to the fitted
 * speed over the same frames, so that the ball's slowing drops out. The exposure is common to all frames; scale,
 * lens and time per line move blur and fit together and are propagated so. The recording rate moves the fit only.
 */
export function determineStreakSpeed(
  inputs: StreakInputs,
): Outcome<{ readonly report: StreakReport; readonly warnings: readonly Warning[] }> {
  const { exposure, shared, path, coverage } = inputs;
  const perPixel = shared.metresPerPixel / exposure.value;
  const mean = meanLength(inputs, perPixel);
  if (!mean.ok) return mean;
  const { lengths, shares, ownU, dof } = mean.value;
  const fitted = path.meanSpeed(
    lengths.map(({ time }) => time),
    shares,
  );
  const length = lengths.reduce((sum, one, i) => sum + (shares[i] as number) * one.length, 0);
  const speed = length * perPixel;
  if (!(Math.hypot(ownU, LENGTH_MODEL_U * perPixel) < MOST_RELATIVE_U * speed)) {
    const values = { length: length.toFixed(1), most: `${100 * MOST_RELATIVE_U} %` };
    return failure(
      'blurTooShort',
      `The ball moves only ${values.length} px during an exposure, too little to tell a speed from to ${values.most}.`,
      'Nothing is lost: a short exposure gives the sharper centres.',
      values,
    );
  }
  const own: BudgetEntry[] = [
    entry('length of the blur', 'A', ownU / perPixel, 'px', perPixel, dof),
    entry('shape of the edge', 'B', LENGTH_MODEL_U, 'px', perPixel, null),
    entry('exposure', 'B', exposure.u, 's', -speed / exposure.value, null),
  ];
  const nominal = nominalSetting(shared);
  const speedAt = speedOf(inputs, mean.value, length);
  const common = sharedInputs(shared).map((input, k) => ({
    input,
    streak:
      (speedAt(shifted(nominal, input, input.u)) - speedAt(shifted(nominal, input, -input.u))) / 2,
    fit: fitted.moved[k] as number,
  }));
  const line = ({ source, type, u, unit, dof: inputDof }: SharedInput, effect: number) =>
    entry(source, type, u, unit, effect / u, inputDof);
  const streak = combine([...own, ...common.map(({ input, streak }) => line(input, streak))]);
  const apart = combine([
    ...own,
    entry('fitted speed', 'A', fitted.ownU, 'm/s', -1, fitted.dof),
    ...common.map(({ input, streak, fit }) => line(input, streak - fit)),
  ]);
  const minusFit = speed - fitted.value;
  const agrees = Math.abs(minusFit) <= coverageFactor(1 - RARE, apart.dof) * apart.u;
  return success({
    report: {
      speed: quantity(speed, streak.u, streak.dof, coverage),
      minusFit: quantity(minusFit, apart.u, apart.dof, coverage),
      agrees,
      frames: lengths.length,
    },
    warnings: agrees ? [] : [disagreement(speed, fitted.value, apart.u)],
  });
}

interface MeanLength {
  readonly lengths: readonly BlurLength[];
  /** Share of each, adding up to 1. */
  readonly shares: readonly number[];
  /** Standard uncertainty of the mean from the frames' own, m/s, and its degrees of freedom. */
  readonly ownU: number;
  readonly dof: number | null;
}

/** Weights of the frames, gross errors left out; their scatter about the fitted speed checks what is stated of them. */
function meanLength({ lengths, path }: StreakInputs, perPixel: number): Outcome<MeanLength> {
  if (lengths.length < FEWEST_FRAMES) return tooFew(lengths.length);
  const apart = Float64Array.from(
    lengths,
    ({ length, time }) => length * perPixel - path.at(time).v,
  );
  const stated = Float64Array.from(lengths, ({ u }) => u * perPixel);
  const ones = new Float64Array(lengths.length).fill(1);
  const robust = fitRobustly((sigmas) => fitLinear(ones, apart, sigmas), stated, 1);
  const kept = lengths.flatMap((one, i) =>
    robust === null || (robust.weights[i] as number) < OUTLIER_WEIGHT
      ? []
      : [{ one, apart: apart[i] as number, sigma: stated[i] as number }],
  );
  if (kept.length < FEWEST_FRAMES) return tooFew(kept.length);
  const sigmas = Float64Array.from(kept, ({ sigma }) => sigma);
  const fit = fitLinear(
    ones.slice(0, kept.length),
    Float64Array.from(kept, (frame) => frame.apart),
    sigmas,
  );
  const weights = kept.map(({ sigma }) => 1 / sigma ** 2);
  const total = weights.reduce((a, b) => a + b);
  const excess = fit.dof > 0 ? Math.max(1, fit.chiSquare / fit.dof) : 1;
  const tooWide = fit.dof > 0 && 1 - chiSquareCdf(fit.chiSquare, fit.dof) < SIGNIFICANCE;
  return success({
    lengths: kept.map(({ one }) => one),
    shares: weights.map((weight) => weight / total),
    ownU: Math.sqrt(excess / total),
    dof: tooWide ? fit.dof : null,
  });
}

const tooFew = (count: number): Outcome<never> =>
  failure(
    'tooFewBlurred',
    `The blur's length is told well in ${count} frame${count === 1 ? '' : 's'} of the fit; at least ${FEWEST_FRAMES} are needed.`,
    'Film a longer stretch of free flight, or let more of the ball show.',
    { count, fewest: FEWEST_FRAMES },
  );

/** The streak's speed at any setting of the shared inputs. */
function speedOf(
  { exposure, linesPerPixel, shared }: StreakInputs,
  { lengths, shares }: MeanLength,
  length: Pixels,
): (setting: Setting) => number {
  // A shift that grows along the flight stretches the blur as it stretches the path.
  const slopes = (shared.shiftSources ?? []).map((_, k) =>
    slope(
      lengths.map(({ along }) => along),
      lengths.map(({ shifts }) => shifts?.[k] ?? 0),
      shares,
    ),
  );
  return ({ metresPerPixel, lineTime, shifts }) => {
    const stretch = slopes.reduce((sum, by, k) => sum + by * (shifts[k] as number), 1);
    // The picture of a ball that flies along the readout is drawn out by the lines' delay, its blur with it:
    // picture length = length / (1 - speed * time per line), from which the length at another time per line.
    const delay = (linesPerPixel * (lineTime - shared.lineTime.value)) / exposure.value;
    return (stretch * metresPerPixel) / exposure.value / (1 / length + delay);
  };
}

/** Weighted regression slope; 0 where `x` does not vary. */
function slope(x: readonly number[], y: readonly number[], shares: readonly number[]): number {
  const mean = (values: readonly number[]) =>
    values.reduce((sum, value, i) => sum + (shares[i] as number) * value, 0);
  const mx = mean(x);
  const spread = mean(x.map((value) => (value - mx) ** 2));
  return spread > 0 ? mean(y.map((value, i) => value * ((x[i] as number) - mx))) / spread : 0;
}

function disagreement(speed: number, fitted: number, u: number): Warning {
  const values = {
    ...{ blur: speed.toPrecision(4), fit: fitted.toPrecision(4) },
    apart: (Math.abs(speed - fitted) / u).toFixed(1),
  };
  return {
    code: 'streakDisagrees',
    message: `The motion blur gives ${values.blur} m/s, the fit ${values.fit} m/s over the same frames: ${values.apart} times the standard uncertainty apart.`,
    remedy:
      'Check the exposure: the blur depends on it and not on the recording rate. Check the recording rate and lost frames: the fit depends on them and not on the exposure.',
    values,
  };
}
