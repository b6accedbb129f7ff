import type { FrameRecord, ShotRecord } from './record';
import { average, binomialLimits, rootMeanSquare } from './statistics';
import type { ReportPlot, ReportRow } from './types';

export type Sample = FrameRecord & Omit<ShotRecord, 'frames'> & { readonly shot: number };

/** Every frame with what its shot was drawn with. */
export const samplesOf = (shots: readonly ShotRecord[]): Sample[] =>
  shots.flatMap(({ frames, ...drawn }, shot) => frames.map((f) => ({ ...drawn, ...f, shot })));

const accepted = (samples: readonly Sample[]): Sample[] =>
  samples.filter(({ refused }) => refused === null);

/** Errors of both axes over their bounds. */
const overBound = (samples: readonly Sample[]): number[] =>
  accepted(samples).flatMap((s) => [s.along / s.boundAlong, s.across / s.boundAcross]);

/** Errors of both axes, px. */
const errors = (samples: readonly Sample[]): number[] =>
  accepted(samples).flatMap(({ along, across }) => [along, across]);

/** Errors of both axes over their stated standard uncertainties. */
const normalised = (samples: readonly Sample[]): number[] =>
  accepted(samples).flatMap((s) => [
    s.along / Math.sqrt(s.varAlong),
    s.across / Math.sqrt(s.varAcross),
  ]);

/** Squared distances from the truth in the stated covariance. */
const distances = (samples: readonly Sample[]): number[] =>
  accepted(samples).map(
    ({ along, across, varAlong, varAcross, cov }) =>
      (along * along * varAcross - 2 * along * across * cov + across * across * varAlong) /
      (varAlong * varAcross - cov * cov),
  );

const ratioToBound = (samples: readonly Sample[]): number => rootMeanSquare(overBound(samples));
const rmsError = (samples: readonly Sample[]): number => rootMeanSquare(errors(samples));
const rmsBound = (samples: readonly Sample[]): number =>
  rootMeanSquare(accepted(samples).flatMap((s) => [s.boundAlong, s.boundAcross]));
/** Share of the normalised errors within so many standard uncertainties. */
const shareWithin = (samples: readonly Sample[], sigmas: number): number =>
  average(normalised(samples).map((error) => Number(Math.abs(error) <= sigmas)));

type Limit = ReportRow['limit'];

const within = (value: number, { low, high }: Limit): boolean =>
  value >= (low ?? value) && value <= (high ?? value);

type Figure = (samples: readonly Sample[]) => number;

/**
 * Parts of a class: so many of their standard uncertainties are allowed for the scatter over few shots. There
 * are some thirty parts and each is judged at several seeds: at two, chance alone would fail one or another.
 */
const PART_SPREADS = 3;
/** But no more than this share of the limit, lest one wild shot excuse itself by its own scatter. */
const MOST_ALLOWED = { ratio: 0.15, bias: 1 } as const;

/**
 * A row; a figure of nothing fails. A part of a class fails where it exceeds the limit by more than three
 * times its own standard uncertainty, or by a share of it: the frames of a shot err together, and a part has few.
 */
function row(
  of: string,
  figure: string,
  samples: readonly Sample[],
  figureOf: Figure,
  unit: ReportRow['unit'],
  limit: Limit,
  part: keyof typeof MOST_ALLOWED | null = null,
): ReportRow {
  const n = accepted(samples).length;
  const value = figureOf(samples);
  const common = { of, figure, value, unit, limit, n };
  if (part === null) return { ...common, passed: n > 0 && within(value, limit) };
  const u = spreadOverShots(samples, figureOf);
  const allowed = Math.min(PART_SPREADS * u, MOST_ALLOWED[part] * (limit.high ?? 0));
  return {
    ...common,
    passed: n > 0 && within(value - allowed, limit),
    note: `± ${u.toFixed(2)}`,
  };
}

/** Standard uncertainty of a figure: jackknife over the shots (Efron and Stein, Ann. Statist. 9 (1981) 586). */
function spreadOverShots(samples: readonly Sample[], figureOf: Figure): number {
  const shots = [...new Set(samples.map(({ shot }) => shot))];
  const without = shots.map((shot) => figureOf(samples.filter((s) => s.shot !== shot)));
  const middle = average(without);
  const squares = without.reduce((sum, value) => sum + (value - middle) ** 2, 0);
  return Math.sqrt((squares * (shots.length - 1)) / Math.max(1, shots.length));
}

export const ratioRow = (of: string, samples: readonly Sample[], most: number): ReportRow =>
  row(of, 'RMS over bound', samples, ratioToBound, '', { high: most });

export const partRatioRow = (of: string, samples: readonly Sample[], most: number): ReportRow =>
  row(of, 'RMS over bound', samples, ratioToBound, '', { high: most }, 'ratio');

export const rmsRow = (of: string, samples: readonly Sample[], most: number): ReportRow =>
  row(of, 'RMS', samples, rmsError, 'px', { high: most });

/** The largest of the means of errors along, across, and where a poor estimator is drawn to, each as `scaled`. */
function worstMean(
  samples: readonly Sample[],
  scaled: (error: number, bound: number) => number,
): number {
  const good = accepted(samples);
  const pulled = good.flatMap((s) =>
    s.pull === null ? [] : [scaled(s.pull, Math.hypot(s.boundAlong, s.boundAcross) / Math.SQRT2)],
  );
  const means = [
    average(good.map((s) => scaled(s.along, s.boundAlong))),
    average(good.map((s) => scaled(s.across, s.boundAcross))),
    average(pulled),
  ];
  return Math.max(...means.map(Math.abs));
}

/** A bias of this many px counts as much as one of this share of the bound. */
const SMALL_BIAS_PX = 0.002;
export const MOST_BIAS_SHARE = 0.3;

/** Bias over the bound, or over what makes 0.002 px as much as 0.3 of the bound, whichever is larger. */
const biasOverBound = (samples: readonly Sample[]): number =>
  worstMean(samples, (error, bound) => error / Math.max(bound, SMALL_BIAS_PX / MOST_BIAS_SHARE));
const biasPx = (samples: readonly Sample[]): number => worstMean(samples, (error) => error);

export const biasShareRow = (of: string, samples: readonly Sample[], limit: Limit): ReportRow =>
  row(of, 'bias over bound', samples, biasOverBound, '', limit);

export const partBiasShareRow = (of: string, samples: readonly Sample[], limit: Limit): ReportRow =>
  row(of, 'bias over bound', samples, biasOverBound, '', limit, 'bias');

export const biasRow = (of: string, samples: readonly Sample[], limit: Limit): ReportRow =>
  row(of, 'bias', samples, biasPx, 'px', limit);

/** Exact limits of a share of which these are drawn, per cent. */
const shareLimits = (hits: readonly boolean[], confidence?: number) =>
  binomialLimits(hits.filter(Boolean).length, Math.max(1, hits.length), confidence).map(
    (share) => 100 * share,
  ) as [number, number];

/** Share of `hits` among `values`, in per cent, with its exact limits. */
export function shareRow(
  of: string,
  figure: string,
  hits: readonly boolean[],
  limit: Limit,
): ReportRow {
  const count = hits.filter(Boolean).length;
  const n = hits.length;
  const share = (100 * count) / Math.max(1, n);
  return {
    ...{ of, figure, value: share, unit: '%', limit, n },
    passed: n > 0 && within(share, limit),
    limits95: shareLimits(hits),
  };
}

/** Quantiles of chi-square with two degrees of freedom: -2 log(1 - share). */
const ellipse = (share: number): number => -2 * Math.log(1 - share);

/** How true the stated covariance is. Rows without limits are for information. */
export function calibrationRows(of: string, samples: readonly Sample[]): ReportRow[] {
  const errors = normalised(samples);
  const squares = distances(samples);
  const inside = (sigmas: number) => errors.map((error) => Math.abs(error) <= sigmas);
  const enclosed = (share: number) => squares.map((square) => square <= ellipse(share));
  return [
    shareRow(of, 'within 1 u', inside(1), { low: 65, high: 71 }),
    shareRow(of, 'within 1.96 u', inside(1.96), { low: 93, high: 97 }),
    shareRow(of, 'within 3 u', inside(3), {}),
    shareRow(of, 'in the 68.3 % ellipse', enclosed(0.6827), {}),
    shareRow(of, 'in the 95 % ellipse', enclosed(0.95), {}),
  ];
}

/** Share of refused frames, with how many for which reason. */
export function refusedRow(of: string, samples: readonly Sample[], most: number): ReportRow {
  const hits = samples.map(({ refused }) => refused !== null);
  const reasons = new Map<string, number>();
  for (const { refused } of samples) {
    if (refused !== null) reasons.set(refused, (reasons.get(refused) ?? 0) + 1);
  }
  const note = [...reasons].map(([code, count]) => `${count} ${code}`).join(', ');
  return {
    ...shareRow(of, 'refused', hits, { high: most }),
    ...(note === '' ? {} : { note }),
  };
}

type Point = ReportPlot['series'][number]['points'][number];

/** One point for each of the values that `key` takes, from the samples that have it. */
function pointsBy(
  samples: readonly Sample[],
  key: (sample: Sample) => number,
  figure: (group: readonly Sample[]) => Omit<Point, 'x'>,
): Point[] {
  const groups = new Map<number, Sample[]>();
  for (const sample of samples) {
    const at = key(sample);
    const group = groups.get(at);
    if (group) group.push(sample);
    else groups.set(at, [sample]);
  }
  return [...groups]
    .filter(([, group]) => accepted(group).length > 0)
    .sort(([a], [b]) => a - b)
    .map(([x, group]) => ({ x, ...figure(group) }));
}

/** A maker of series: of each of the values that `pick` may take, a figure of its samples against `key`. */
export const seriesBy =
  <V extends string | number>(
    values: readonly V[],
    pick: (sample: Sample) => string | number | null,
    name: (value: V) => string,
  ) =>
  (
    samples: readonly Sample[],
    key: (sample: Sample) => number,
    figure: Parameters<typeof pointsBy>[2],
  ): ReportPlot['series'] =>
    values.map((value) => ({
      name: name(value),
      points: pointsBy(
        samples.filter((sample) => pick(sample) === value),
        key,
        figure,
      ),
    }));

/** A root mean square's own standard uncertainty: its share 1 / sqrt(2 n), n errors. */
const withSpread = (y: number, n: number): Omit<Point, 'x'> => ({ y, u: y / Math.sqrt(2 * n) });

export const ratioPoint = (group: readonly Sample[]): Omit<Point, 'x'> =>
  withSpread(ratioToBound(group), 2 * accepted(group).length);
export const rmsPoint = (group: readonly Sample[]): Omit<Point, 'x'> =>
  withSpread(rmsError(group), 2 * accepted(group).length);
export const boundPoint = (group: readonly Sample[]): Omit<Point, 'x'> => ({ y: rmsBound(group) });
export const biasSharePoint = (group: readonly Sample[]): Omit<Point, 'x'> => ({
  y: biasOverBound(group),
  u: ratioToBound(group) / Math.sqrt(accepted(group).length),
});
export const biasPoint = (group: readonly Sample[]): Omit<Point, 'x'> => ({
  y: biasPx(group),
  u: rmsError(group) / Math.sqrt(accepted(group).length),
});

/** Shares within 1, 1.96 and 3 u against `key`, per cent. */
export function calibrationSeries(
  samples: readonly Sample[],
  key: (sample: Sample) => number,
): ReportPlot['series'] {
  return [1, 1.96, 3].map((sigmas) => ({
    name: `within ${sigmas} u`,
    points: pointsBy(samples, key, (group) => {
      const share = shareWithin(group, sigmas);
      const n = 2 * accepted(group).length;
      return { y: 100 * share, u: 100 * Math.sqrt((share * (1 - share)) / n) };
    }),
  }));
}
/** Shares a normal error has within 1, 1.96 and 3 standard deviations, per cent. */
export const NORMAL_SHARES = [68.27, 95, 99.73] as const;

/**
 * How sure it must be that a part of a class, which has few, lies past a limit before it fails, as three standard
 * deviations are: there are many parts, judged at several seeds, and chance alone would fail one or another.
 */
export const PART_CONFIDENCE = 0.997;

/** The same of a part of a class. */
export function partRow(
  of: string,
  figure: string,
  hits: readonly boolean[],
  limit: Limit,
): ReportRow {
  const [low, high] = shareLimits(hits, PART_CONFIDENCE);
  const passed = hits.length > 0 && low <= (limit.high ?? low) && high >= (limit.low ?? high);
  return { ...shareRow(of, figure, hits, limit), passed };
}
