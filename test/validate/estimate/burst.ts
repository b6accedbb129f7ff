import type { GreyFrame } from '../../../src/core/frame';
import type { Outcome } from '../../../src/core/reason';
import { buildBackground } from '../../../src/image/background';
import { loadVision } from '../../../src/image/opencv/vision';
import { locateBurst } from '../../../src/seal/burst';
import { observeSeal } from '../../../src/seal/observe';
import { REST_FRAMES } from '../../../src/seal/reference';
import type { SealClock } from '../../../src/seal/timing';
import type { FindComponents } from '../../../src/seal/types';
import { sealView } from '../../../src/seal/view';
import { PART_CONFIDENCE, partRow, shareRow } from '../figures';
import { type Random, randomStream } from '../render/random';
import { rmsLimits, rootMeanSquare } from '../statistics';
import type { ReportPlot, ReportRow, ValidationClass } from '../types';
import { drawSeal, KINDS, type Kind, opensFor, type SealPlan } from './sealDraw';
import { paintSeal } from './sealPaint';

/** Sets its random numbers apart from other classes'. */
const KEY = 31;
const CHUNKS = 50;
const FILMS_A_CHUNK = 5;
/** Contrast of the film to the noise of a pixel. */
const NOISES = [
  [5, 10],
  [10, 50],
] as const;
const COVERAGE = 0.95;
const LIMIT = { low: 93, high: 97 };
/** Of a frame interval. What frames that only tell on which side of them it lies leave is 1 / sqrt(12) = 0.29. */
const MOST_RMS = 0.29;
/** The same where the opening shows in so many frames with a contrast of at least 10 times the noise. */
const OPENING_FRAMES = 3;
const MOST_RMS_OPENING = 0.2;
const MOST_REFUSED = 1;
/** What is thrown out is in view up to so many ball radii from the plane. */
const VIEW_RADII = 3.4;

interface Film {
  readonly kind: Kind;
  readonly contrast: number;
  readonly refused: string | null;
  /** Minus the truth, in frame intervals. */
  readonly error: number;
  readonly u: number;
  readonly held: boolean;
  /** Whether the frames called whole and open are so. */
  readonly bracketed: boolean;
  readonly opening: boolean;
  readonly exposure: number;
}

/** An even clock without errors of its own; the unit of time is the frame interval. */
const CLOCK: SealClock = {
  timeAt: (frame) => frame,
  lineAt: () => 0,
  frameTimeU: 0,
  rateRelativeU: 0,
  lineTime: { value: 0, u: 0 },
};

/** The instant a seal bursts, from rendered films of seals that bulge and part in four ways. */
export const burst: ValidationClass<readonly Film[]> = {
  name: 'burst',
  chunks: CHUNKS,
  async run(chunk, seed) {
    const { components } = await loadVision();
    return KINDS.flatMap((kind, k) =>
      NOISES.flatMap((contrastToNoise, n) =>
        Array.from({ length: FILMS_A_CHUNK }, (_, i) => {
          const random = randomStream(seed, KEY, chunk, k, n, i);
          return time(drawSeal({ kind, contrastToNoise }, random), random, components);
        }),
      ),
    );
  },
  conclude(records) {
    const films = records.flat();
    return { rows: rowsOf(films), plots: [plotOf(films)], text: textOf(films) };
  },
};

function time(plan: SealPlan, random: Random, components: FindComponents): Film {
  const { width, height, exposure, kind } = plan;
  const frames = paintSeal(plan, random).map(
    (data, index): GreyFrame => ({ index, width, height, white: 255, data }),
  );
  const view = sure(
    sealView({
      ...{ plane: plan.plane, axis: plan.axis, ballRadius: plan.ballRadius, region: null },
      ...{ frameWidth: width, frameHeight: height },
    }),
  );
  const reference = sure(buildBackground(frames.slice(0, REST_FRAMES)));
  const found = locateBurst(
    frames.map((frame) => observeSeal(frame, reference, view, components)),
    CLOCK,
    view,
    {
      coverage: COVERAGE,
      exposure: { value: exposure, u: 0 },
      burstBetween: null,
      ballFrameLimit: Math.ceil(plan.ball.contact),
      contact: plan.ball.contact,
    },
  );
  const contrast = Math.abs(plan.film - plan.air) / plan.noise;
  const common = {
    ...{ kind, contrast, exposure },
    opening: opensFor(plan, OPENING_FRAMES, VIEW_RADII * plan.ballRadius),
  };
  if (!found.ok) {
    return { ...common, refused: found.reason.code, error: 0, u: 0, held: false, bracketed: false };
  }
  const { burst: moment, between } = found.value;
  const [low, high] = moment.interval;
  return {
    ...common,
    refused: null,
    error: moment.value - plan.burst,
    u: moment.u,
    held: low <= plan.burst && plan.burst <= high,
    bracketed:
      between[0] - exposure / 2 <= plan.burst &&
      plan.burst <= Math.min(between[1] + exposure / 2, Math.max(between[1], plan.ball.contact)),
  };
}

function sure<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(outcome.reason.message);
  return outcome.value;
}

const told = (films: readonly Film[]): Film[] => films.filter(({ refused }) => refused === null);

function rowsOf(films: readonly Film[]): ReportRow[] {
  const classes = KINDS.flatMap((kind) =>
    NOISES.map(([low, high]) => ({
      of: `${NAMES[kind]}, contrast-to-noise ${low} to ${high}`,
      group: films.filter((f) => f.kind === kind && f.contrast >= low && f.contrast < high),
    })),
  );
  const opening = [
    ...KINDS.map((kind) => ({ of: NAMES[kind], kinds: [kind] as readonly Kind[], part: true })),
    { of: 'all kinds', kinds: KINDS, part: false },
  ].map(({ of, kinds, part }) => ({
    part,
    of: `${of}, ${OPENING_FRAMES} opening frames, contrast-to-noise 10 or more`,
    group: films.filter((f) => kinds.includes(f.kind) && f.opening && f.contrast >= 10),
  }));
  return [
    ...classes.flatMap(({ of, group }) => [
      rmsRow(of, group, MOST_RMS),
      coverageRow(of, group, LIMIT, partRow),
      shareRow(
        of,
        'burst not found',
        group.map(({ refused }) => refused !== null),
        {
          high: MOST_REFUSED,
        },
      ),
    ]),
    ...opening.flatMap(({ of, group, part }) => [
      rmsRow(of, group, MOST_RMS_OPENING, part),
      // Parts of the classes above: for information.
      coverageRow(of, group, {}),
    ]),
    coverageRow('all films', films, LIMIT),
    shareRow(
      'all films',
      'between the frames stated',
      told(films).map((f) => f.bracketed),
      {},
    ),
  ];
}

const NAMES: Readonly<Record<Kind, string>> = {
  centre: 'torn at the centre',
  rim: 'torn at the rim',
  petals: 'petals',
  pieces: 'several pieces',
};

/** A part, with few films, fails where it surely lies past the limit. */
function rmsRow(of: string, films: readonly Film[], most: number, part = false): ReportRow {
  const errors = told(films).map(({ error }) => error);
  const value = rootMeanSquare(errors);
  const limits95 = rmsLimits(value, errors.length);
  const [surely] = rmsLimits(value, errors.length, PART_CONFIDENCE);
  return {
    of,
    figure: 'RMS error, frame intervals',
    value,
    unit: '',
    limit: { high: most },
    passed: errors.length > 0 && (part ? surely : value) <= most,
    n: errors.length,
    limits95,
  };
}

const coverageRow = (
  of: string,
  films: readonly Film[],
  limit: ReportRow['limit'],
  row = shareRow,
): ReportRow =>
  row(
    of,
    '95 % interval holds the burst',
    told(films).map(({ held }) => held),
    limit,
  );

const textOf = (films: readonly Film[]): string =>
  `Burst of a seal: ${films.length} rendered films of a film that bulges (evenly, faster or slower as it goes) and tears at its centre, at its rim, into petals or into several pieces. Pieces fly at 0.3 to 3 ball speeds; the exposure is 0.1 to 0.9 of the frame interval, at any phase; half of the films show a puff of haze; the ball follows after 0.6 to 6 frame intervals. Coverage is judged over all films; a kind, with few, fails where its figure lies outside with a confidence of 99.7 % (shares: exact limits; errors: as if normal, by chi-square). Root-mean-square error over stated uncertainty ${rootMeanSquare(told(films).map(({ error, u }) => error / u)).toFixed(2)}.`;

/** Error and stated uncertainty against the exposure. */
function plotOf(films: readonly Film[]): ReportPlot {
  const bins = 8;
  const inBin = (i: number) =>
    told(films).filter(({ exposure }) => Math.floor(((exposure - 0.1) / 0.8) * bins) === i);
  const series = (name: string, of: (film: Film) => number) => ({
    name,
    points: Array.from({ length: bins }, (_, i) => {
      const y = rootMeanSquare(inBin(i).map(of));
      const n = Math.max(1, inBin(i).length);
      return { x: 0.1 + (0.8 * (i + 0.5)) / bins, y, u: y / Math.sqrt(2 * n) };
    }),
  });
  return {
    file: 'burst',
    title: 'Burst instant: error and stated uncertainty',
    x: { label: 'exposure, frame intervals' },
    y: { label: 'frame intervals' },
    series: [
      series('RMS of error', ({ error }) => error),
      series('RMS of stated uncertainty', ({ u }) => u),
    ],
    limits: [MOST_RMS],
  };
}
