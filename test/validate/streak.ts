import { budgetExit } from '../../src/exit/determineExit';
import { determineStreakSpeed } from '../../src/exit/streakSpeed';
import type { FlightPoint, SharedInputs } from '../../src/exit/types';
import type { StreakReport } from '../../src/shot/result';
import { shareRow } from './figures';
import { isMeasured, measureAlone } from './measure';
import { renderFilm } from './render/film';
import { type Random, randomStream } from './render/random';
import { drawShot, type Shot } from './shot';
import { average, rootMeanSquare } from './statistics';
import type { ReportPlot, ReportRow, ValidationClass } from './types';

/** Sets its random numbers apart from other classes'. */
const KEY = 7;
const CHUNKS = 20;
const SHOTS_A_CHUNK = 50;
/** Frames without the ball, on each side: enough for a background. */
const STILL_FRAMES = 10;
/** The renders have the length of the blur to 2e-4 and the centre to 5e-4 px, a tenth of what noise leaves of them. */
const CELLS = 5;
const COVERAGE = 0.95;
/** Limits of the share of intervals that hold the truth, %. */
const LIMIT = { low: 93, high: 97 };
const MOST_REFUSED = 2;

/** Nominal values of what is stated; all true values are drawn from their uncertainties. */
const METRES_PER_PIXEL = 1e-3;
const RATE = 12_000;
const SCALE_U = 0.002;
const RATE_U = 5e-5;
/** Relative standard uncertainty of the exposure, drawn between these. */
const EXPOSURE_U = [0.003, 0.03] as const;

interface StreakShot {
  readonly refused: string | null;
  /** Streak speed minus truth, and minus the fit, over their standard uncertainties. */
  readonly error: number;
  readonly minusFit: number;
  /** Whether the intervals hold the true speed and nothing. */
  readonly held: boolean;
  readonly zero: boolean;
  readonly agrees: boolean;
  /** Relative standard uncertainties: of the speed, and of the exposure. */
  readonly u: number;
  readonly exposureU: number;
  readonly radius: number;
}

/**
 * The speed told from the blur alone. Each shot is a few frames of a ball swept about one radius, each measured by
 * itself: a reduction reads the blur from its first pass too, and the centres of a second one would move the
 * difference to the fit by 0.05 of its uncertainty (root mean square). Stated exposure, scale and recording rate
 * differ from the true ones as their uncertainties allow, the scale for blur and fit alike.
 */
export const streak: ValidationClass<readonly StreakShot[]> = {
  name: 'streak',
  chunks: CHUNKS,
  async run(chunk, seed) {
    return Array.from({ length: SHOTS_A_CHUNK }, (_, i) =>
      shoot(randomStream(seed, KEY, chunk, i)),
    );
  },
  conclude(records) {
    const all = records.flat();
    const told = all.filter(({ refused }) => refused === null);
    const of = 'blur of one radius, radius 12 to 14 px';
    const share = (figure: string, hits: readonly boolean[], limit: ReportRow['limit']) =>
      shareRow(of, figure, hits, limit);
    const rows: ReportRow[] = [
      share(
        'no speed from the blur',
        all.map(({ refused }) => refused !== null),
        { high: MOST_REFUSED },
      ),
      share(
        '95 % interval holds the true speed',
        told.map(({ held }) => held),
        LIMIT,
      ),
      share(
        '95 % interval of the difference to the fit holds nothing',
        told.map(({ zero }) => zero),
        LIMIT,
      ),
      share(
        'called in agreement with the fit',
        told.map(({ agrees }) => agrees),
        { low: 98 },
      ),
    ];
    return {
      rows,
      plots: [plotOf(told)],
      text: `Streak speed: ${all.length} shots of four or five frames, contrast-to-noise 8 to 40, blur 0.7 to 1.3 radii. Exposure (known to 0.3 to 3 %), scale (0.2 %, the same for blur and fit) and recording rate are drawn from their uncertainties. Root-mean-square error over stated uncertainty: ${rootMeanSquare(told.map(({ error }) => error)).toFixed(2)} of the speed, ${rootMeanSquare(told.map(({ minusFit }) => minusFit)).toFixed(2)} of its difference to the fit; mean relative uncertainty ${(100 * average(told.map(({ u }) => u))).toFixed(2)} %.`,
    };
  },
};

function shoot(random: Random): StreakShot {
  const radius = random.uniform(12, 14);
  const kind = {
    radius,
    contrastToNoise: random.uniform(8, 40),
    surface: random.pick<'even' | 'matt'>(['even', 'matt']),
    step: 1.4,
    sweep: random.uniform(0.7, 1.3),
    sightings: Math.floor(random.uniform(4, 6)),
  } as const;
  const shot: Shot = {
    ...drawShot(kind, random),
    before: STILL_FRAMES,
    after: STILL_FRAMES,
    cells: CELLS,
  };
  const exposureU = random.uniform(...EXPOSURE_U);
  const common = { radius, exposureU };
  const outcome = streakOf(shot, exposureU, random);
  if (typeof outcome === 'string') {
    const none = { error: 0, minusFit: 0, held: false, zero: false, agrees: false, u: 0 };
    return { refused: outcome, ...none, ...common };
  }
  const { report, truth } = outcome;
  const { speed, minusFit, agrees } = report;
  const within = (value: number, [low, high]: readonly [number, number]) =>
    low <= value && value <= high;
  return {
    refused: null,
    error: (speed.value - truth) / speed.u,
    minusFit: minusFit.value / minusFit.u,
    held: within(truth, speed.interval),
    zero: within(0, minusFit.interval),
    agrees,
    u: speed.u / truth,
    ...common,
  };
}

/** Films, measures, fits and reads the blur; the code of the reason where there is no speed from it. */
function streakOf(
  shot: Shot,
  exposureU: number,
  random: Random,
): string | { report: StreakReport; truth: number } {
  const [first, second] = shot.sightings;
  if (first === undefined || second === undefined) throw new Error('A shot needs two frames.');
  const step = Math.hypot(second.ball.x - first.ball.x, second.ball.y - first.ball.y);
  const scale = METRES_PER_PIXEL * (1 + random.normal(0, SCALE_U));
  const rate = RATE * (1 + random.normal(0, RATE_U));
  const truth = step * scale * rate;
  const trueExposure = Math.hypot(...first.ball.sweep) / (step * rate);
  const exposure = trueExposure / (1 + random.normal(0, exposureU));

  const { alone, ball } = measureAlone(shot, renderFilm(shot, random), random);
  const [ax, ay] = shot.axis;
  // The muzzle lies so far back that what gas does there is over.
  const along = (x: number, y: number) =>
    (x - first.ball.x) * ax + (y - first.ball.y) * ay + 12 * first.ball.radius;
  const found = alone.map((centre, frame) => {
    if (!isMeasured(centre)) return null;
    const { x, y, varX, varY, covXY } = centre;
    const point: FlightPoint = {
      frame,
      frameTime: frame / RATE,
      line: 0,
      along: along(x, y),
      alongU: Math.sqrt(ax * ax * varX + ay * ay * varY + 2 * ax * ay * covXY),
      timeU: 0,
    };
    return { point, blur: centre.blur };
  });
  const seen = found.filter((one) => one !== null);
  const shared = sharedInputs(first.ball.radius);
  const fit = budgetExit(
    seen.map(({ point }) => point),
    shared,
    { model: 'uniform', robust: true, coverage: COVERAGE, seed: 1 },
  );
  if (!fit.ok) return fit.reason.code;
  const length = Math.hypot(ball.blur[0], ball.blur[1]);
  const streak = determineStreakSpeed({
    lengths: seen.flatMap(({ point, blur }) =>
      blur === undefined
        ? []
        : [
            {
              frame: point.frame,
              time: point.frameTime,
              length: blur.stretch * length,
              u: blur.u * length,
              along: point.along,
            },
          ],
    ),
    exposure: { value: exposure, u: exposureU * exposure },
    linesPerPixel: 0,
    shared,
    path: fit.value.report.path,
    coverage: COVERAGE,
  });
  return streak.ok ? { report: streak.value.report, truth } : streak.reason.code;
}

/** A ball so heavy that air does not slow it: the renders' does not slow down. */
function sharedInputs(radius: number): SharedInputs {
  const exactly = (value: number) => ({ value, u: 0 });
  return {
    metresPerPixel: METRES_PER_PIXEL,
    scaleSources: [{ source: 'known length', type: 'B', u: SCALE_U, dof: null }],
    clockSources: [{ source: 'recording rate', type: 'B', u: RATE_U, dof: null }],
    lineTime: exactly(0),
    muzzleU: 0,
    ballDiameter: exactly(2 * radius * METRES_PER_PIXEL),
    ballMass: exactly(1e3),
    airDensity: exactly(1.2),
    airTemperature: 293.15,
  };
}

/** Error over stated uncertainty against how well the exposure is known. */
function plotOf(told: readonly StreakShot[]): ReportPlot {
  const [low, high] = EXPOSURE_U;
  const bins = 6;
  const points = Array.from({ length: bins }, (_, i) => {
    const from = low + ((high - low) * i) / bins;
    const to = low + ((high - low) * (i + 1)) / bins;
    const inside = told.filter(({ exposureU }) => exposureU >= from && exposureU < to);
    return { exposureU: (from + to) / 2, inside };
  }).filter(({ inside }) => inside.length > 0);
  const series = (name: string, of: (shot: StreakShot) => number) => ({
    name,
    points: points.map(({ exposureU, inside }) => {
      const y = rootMeanSquare(inside.map(of));
      return { x: 100 * exposureU, y, u: y / Math.sqrt(2 * inside.length) };
    }),
  });
  return {
    file: 'streak-calibration',
    title: 'Speed from the blur: error over stated uncertainty',
    x: { label: 'relative standard uncertainty of the exposure, %' },
    y: { label: 'RMS of error over stated standard uncertainty' },
    series: [
      series('speed against truth', ({ error }) => error),
      series('speed against fit', ({ minusFit }) => minusFit),
    ],
    limits: [1],
  };
}
