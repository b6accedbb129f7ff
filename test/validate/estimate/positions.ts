import { median } from '../../../src/core/statistics';
import { determineExit } from '../../../src/exit/determineExit';
import { shareRow } from '../figures';
import { type Random, randomStream } from '../render/random';
import { average, rootMeanSquare } from '../statistics';
import type { ReportPlot, ReportRow, ValidationClass } from '../types';
import { KINDS, type PositionsKind } from './positionsKinds';
import { takeShot } from './positionsShot';

/** Sets its random numbers apart from other classes'. */
const KEY = 11;
const SHOTS_A_CHUNK = 100;
const CHUNKS_A_KIND = 20;
const COVERAGE = 0.95;
/** Limits of the share of intervals that hold the truth, %; and of the median error over u. */
const LIMIT = { low: 93.5, high: 96.5 };
const MOST_BIAS = 0.1;
const MOST_REFUSED = 1;
/** The Monte Carlo check of each shot: enough to tell a wrong interval, few enough for so many shots. */
const TRIALS = 2000;

interface Outcome {
  readonly frames: number;
  /** Why there is no speed; null where there is one. */
  readonly refused: string | null;
  /** Exit velocity minus truth over its standard uncertainty; whether the intervals hold speed and time. */
  readonly error: number;
  readonly held: boolean;
  readonly timeHeld: boolean;
  /** Relative standard uncertainty of the speed. */
  readonly u: number;
  /** Whether Monte Carlo confirms the budget's interval. */
  readonly agrees: boolean;
}

interface Chunk {
  readonly kind: number;
  readonly outcomes: readonly Outcome[];
}

/**
 * Exit velocity from positions alone: centres with the errors they are stated to have, no images. Each shot draws its
 * camera, ball, speed and the number of frames, then what is true of all that is stated of them.
 */
export const positions: ValidationClass<Chunk> = {
  name: 'positions',
  chunks: KINDS.length * CHUNKS_A_KIND,
  async run(chunk, seed) {
    const kind = Math.floor(chunk / CHUNKS_A_KIND);
    const outcomes = Array.from({ length: SHOTS_A_CHUNK }, (_, i) =>
      shoot(KINDS[kind] as PositionsKind, randomStream(seed, KEY, chunk, i)),
    );
    return { kind, outcomes };
  },
  conclude(records) {
    const of = (index: number) =>
      records.filter(({ kind }) => kind === index).flatMap(({ outcomes }) => outcomes);
    return {
      rows: KINDS.flatMap((kind, index) => rowsOf(kind, of(index))),
      plots: [plotOf(KINDS.map((kind, index) => ({ kind, told: told(of(index)) })))],
      text: `Positions along the axis of shots at 10 to 300 m/s in fields of 0.15 to 1 m, 6 to 60 frames; centres known to 0.03 to 0.2 px and less well the longer the blur (exposure 2 to 50 % of a frame interval, the centre the mean place over it), half of the shots with time stamps known only so well; global shutter or read out along, against or across the flight. Drawn from what is stated: known length, its end points and depth (0.02 to 0.3 % each), recording rate, exposure, time per line, ball diameter and mass, density of the air, place of the muzzle plane (0.2 to 1 px), drag coefficient, and of the muzzle zone the share of speed lost and its length, falling off in a straight line or exponentially, as likely. The last two kinds have one loss over and over instead, none, or 1.35 times the displaced air's mass, and are for information: what is stated beforehand is about shots of all kinds, not that one. Mean relative standard uncertainty over the kinds judged: ${(100 * average(KINDS.flatMap((kind, index) => (kind.judged ? told(of(index)).map(({ u }) => u) : [])))).toFixed(2)} %.`,
    };
  },
};

const told = (outcomes: readonly Outcome[]): Outcome[] =>
  outcomes.filter(({ refused }) => refused === null);

function shoot(kind: PositionsKind, random: Random): Outcome {
  const { points, shared, velocity, exitTime } = takeShot(kind, random);
  const frames = points.length;
  const exit = determineExit(points, shared, {
    model: kind.model,
    robust: true,
    coverage: COVERAGE,
    seed: 1,
    mostTrials: TRIALS,
  });
  if (!exit.ok) {
    const none = { error: 0, held: false, timeHeld: false, u: 0, agrees: false };
    return { frames, refused: exit.reason.code, ...none };
  }
  const { exitVelocity: v, exitTime: t, monteCarlo } = exit.value;
  const within = (value: number, [low, high]: readonly [number, number]) =>
    low <= value && value <= high;
  return {
    frames,
    refused: null,
    error: (v.value - velocity) / v.u,
    held: within(velocity, v.interval),
    timeHeld: within(exitTime, t.interval),
    u: v.u / velocity,
    agrees: 'agrees' in monteCarlo && monteCarlo.agrees,
  };
}

function rowsOf({ name, judged }: PositionsKind, outcomes: readonly Outcome[]): ReportRow[] {
  const good = told(outcomes);
  const limit = judged ? LIMIT : {};
  const bias = median(good.map(({ error }) => error));
  return [
    shareRow(
      name,
      '95 % interval holds the exit velocity',
      good.map(({ held }) => held),
      limit,
    ),
    {
      of: name,
      figure: 'median error over u',
      value: bias,
      unit: '',
      limit: judged ? { low: -MOST_BIAS, high: MOST_BIAS } : {},
      passed: !judged || Math.abs(bias) <= MOST_BIAS,
      n: good.length,
      // The median of n normal errors scatters by sqrt(pi / 2 n).
      note: `± ${Math.sqrt(Math.PI / 2 / good.length).toFixed(3)}`,
    },
    shareRow(
      name,
      '95 % interval holds the exit time',
      good.map(({ timeHeld }) => timeHeld),
      {},
    ),
    shareRow(
      name,
      'Monte Carlo confirms the interval',
      good.map(({ agrees }) => agrees),
      {},
    ),
    shareRow(
      name,
      'no exit velocity',
      outcomes.map(({ refused }) => refused !== null),
      { high: MOST_REFUSED },
    ),
  ];
}

/** Frames of a shot from which each bin of the plot begins. */
const BINS = [6, 9, 14, 22, 34, 60.5] as const;

/** Error over stated uncertainty against the number of frames. */
function plotOf(
  kinds: readonly { readonly kind: PositionsKind; readonly told: readonly Outcome[] }[],
): ReportPlot {
  const pointOf = (outcomes: readonly Outcome[], i: number) => {
    const [from, to] = [BINS[i] as number, BINS[i + 1] as number];
    const inside = outcomes.filter(({ frames }) => frames >= from && frames < to);
    const y = rootMeanSquare(inside.map(({ error }) => error));
    const u = y / Math.sqrt(2 * Math.max(1, inside.length));
    return { x: Math.sqrt(from * to), y, u, n: inside.length };
  };
  return {
    file: 'positions-calibration',
    title: 'Exit velocity: error over stated uncertainty',
    x: { label: 'frames of a shot', log: true },
    y: { label: 'RMS of error over stated standard uncertainty' },
    series: kinds
      .filter(({ kind }) => kind.judged)
      .map(({ kind, told: outcomes }) => ({
        name: kind.name,
        points: BINS.slice(1)
          .map((_, i) => pointOf(outcomes, i))
          .filter(({ n }) => n > 0)
          .map(({ x, y, u }) => ({ x, y, u })),
      })),
    limits: [1],
  };
}
