import type { Pixels } from '../core/units';
import { type Density, shifted } from './density';
import {
  type FlightOfPieces,
  flightLikelihood,
  type ReachSeen,
  VIEW_END,
} from './flightLikelihood';
import {
  DURATION_WEIGHTS,
  DURATIONS,
  FLYING,
  FOLDING,
  type LossSeen,
  lossLikelihood,
} from './lossLikelihood';
import { type FilmSteps, motionLikelihood } from './motionLikelihood';
import {
  type FilmTemplate,
  type Loss,
  leadingEdge,
  lossSince,
  SMOOTHED_NOISE,
  templateOf,
} from './opening';
import type { SealObservation, SealPicture } from './types';

/** Moments are this many frame intervals apart. */
const STEP = 0.04;
/** The burst is looked for from so long before the last whole frame's exposure, in frame intervals. */
const EARLIER = 0.5;
/** Open frames read: later ones say nothing of the burst that these do not. */
const OPEN_FRAMES = 3;
/** The edge of pieces is where they stand out by so many standard deviations of noise, or by a share of the film's change. */
const EDGE_NOISE = 4.5;
const EDGE_SHARE = 0.15;
const MOST_COVERED = 0.5;
/** Film that comes forward by less than this has not flown, px. */
const FORWARD: Pixels = 0.5;
/** A film this high has a motion that can be read, px, and steps this long. */
const READABLE: Pixels = 1;
const READABLE_STEP: Pixels = 0.7;
/** A tear shows only once its edges have parted: by shares of the time it takes, and how probable each is taken to be. */
const PARTING = [
  [0, 0.6],
  [0.1, 0.2],
  [0.3, 0.1],
  [0.45, 0.1],
] as const;
/**
 * Besides, by one of these, frame intervals, with how probable each is taken to be, and by no more in all: a tear in the
 * middle, seen from the side, hides for a while behind what still stands around it.
 */
const HIDING = [
  [0, 0.32],
  [0.05, 0.28],
  [0.1, 0.25],
  [0.35, 0.08],
  [0.7, 0.05],
  [1.1, 0.02],
] as const;
const MOST_PARTING = 1.5;
/** How probable it is that a kind of evidence misleads. */
const MISLEADING = 0.02;
/** Air slows a free piece by far less than to this share of its speed from frame to frame: what does turns on its hinge. */
const STALLED = 0.5;
/**
 * The laws summed over differ more from each other than films do, so that their sum is wider than its errors: what
 * the frames tell counts to this power. Set on 1480 rendered films, apart from those it is checked on; 1.6 would be
 * the narrowest that holds there.
 */
const EVIDENCE_POWER = 1.45;
/** Where nothing is known of the frame before, its share lost is known no better than this. */
const UNKNOWN = 0.3;

/** The frames around the burst, with times in frame intervals. */
export interface Surroundings {
  /** Observations up to the last that may be read, in order; the ball is not out in any. */
  readonly observations: readonly SealObservation[];
  /** Middle of the exposure of each. */
  readonly times: readonly number[];
  /** Index of the first that may show the film open; the number of observations where none does. */
  readonly open: number;
  /** Index of the first that surely shows it open; the number of observations where none does. */
  readonly surely: number;
  readonly exposure: number;
  /** Whether the last frame before `open` shows the film at rest: it bulges before it bursts. */
  readonly still: boolean;
  /** The film is open by then; null: no bound but the frames. */
  readonly latest: number | null;
  readonly halfAperture: Pixels;
}

/**
 * How probable each moment is to be that of the burst: likelihood of the film's motion, of the share of it lost and
 * of the way its foremost piece flew, all integrated over the exposures, each moment as likely beforehand.
 * Null: too little of the film stands out in the last whole frame to tell.
 */
export function burstDensity(around: Surroundings): Density | null {
  const { observations, times, open, surely, exposure } = around;
  const template = templateOf((observations[open - 1] as SealObservation).picture);
  if (template === null) return null;
  const whole = times[open - 1] as number;
  const next = times[surely] ?? (times.at(-1) as number) + 1;
  const to = Math.min(next + exposure / 2, around.latest ?? Number.POSITIVE_INFINITY);
  const begun = whole - exposure / 2;
  const from = around.still ? begun : Math.min(begun - EARLIER, to - 1);
  const instants = Array.from(
    { length: Math.ceil((to - from) / STEP) + 1 },
    (_, i) => to - i * STEP,
  ).reverse();
  const level = Math.max(
    EDGE_NOISE * SMOOTHED_NOISE * (observations[open - 1] as SealObservation).picture.noise,
    EDGE_SHARE * Math.abs(template.strength),
  );
  const edge = (i: number): Pixels | null => {
    const o = observations[i];
    return o === undefined ? null : leadingEdge(o.picture, level);
  };
  const last = edge(open - 1) ?? 0;
  const before = edge(open - 2) ?? last;
  const speed = Math.max(0, last - before) / (whole - (times[open - 2] ?? whole - 1));
  const first = edge(open);
  const flies = first === null || first > last + FORWARD;

  const seen: LossSeen[] = [earlierLoss(around, before, speed)];
  for (let i = open; i < Math.min(observations.length, surely + OPEN_FRAMES); i++) {
    seen.push({
      ...shareLost(template, (observations[i] as SealObservation).picture),
      time: times[i] as number,
      since: whole,
      growth: speed / Math.max(1, last),
    });
  }
  const flown = flownFrom(around, edge, last);
  const { columns, cell } = (observations[open - 1] as SealObservation).picture;
  const flight: FlightOfPieces = {
    seen: flown,
    limit: columns * cell,
    whole: { time: whole, reach: last },
    speed,
    still: around.still,
    covered: Math.min(MOST_COVERED, level / Math.abs(template.strength)),
    exposure,
    halfAperture: around.halfAperture,
  };
  const laws = flies ? FLYING : FOLDING;
  // A tear that takes long both opens late and lets its pieces go late.
  const losses = robust(
    DURATIONS.map((d) => lossLikelihood(seen, exposure, instants, next, laws, d)),
  );
  const flights =
    flown.length > 0 ? robust(DURATIONS.map((d) => flightLikelihood(flight, instants, d))) : null;
  const weights = new Float64Array(instants.length);
  losses.forEach((loss, d) => {
    const both = Array.from(loss, (l, i) => l * (flights?.[d]?.[i] ?? 1));
    const duration = DURATIONS[d] as number;
    const parting = PARTING.flatMap(([share, chance]) =>
      HIDING.map(
        ([hidden, odds]) =>
          [-Math.min(MOST_PARTING, hidden + share * duration), chance * odds] as const,
      ),
    );
    shifted({ times: instants, weights: both }, parting).weights.forEach((w, i) => {
      weights[i] = (weights[i] as number) + (DURATION_WEIGHTS[d] as number) * w;
    });
  });
  for (const steps of stepsOf(around)) {
    motionLikelihood(steps, exposure, instants).forEach((l, i) => {
      weights[i] = (weights[i] as number) * l;
    });
  }
  return { times: instants, weights: Array.from(weights, (w) => w ** EVIDENCE_POWER) };
}

/**
 * A likelihood that, by so much, may have nothing to say: where two contradict each other both moments stay possible.
 */
function robust(likelihoods: readonly Float64Array[]): Float64Array[] {
  const sum = likelihoods.reduce((all, one) => one.reduce((a, b) => a + b, all), 0);
  const mean = sum / (likelihoods.length * (likelihoods[0]?.length ?? 1));
  return likelihoods.map((one) => one.map((l) => MISLEADING + ((1 - MISLEADING) * l) / mean));
}

/** What the last frame taken for whole has lost since the one before it. */
function earlierLoss(
  { observations, times, open }: Surroundings,
  edge: Pixels,
  speed: number,
): LossSeen {
  const time = times[open - 1] as number;
  const earlier = observations[open - 2];
  const template = earlier === undefined ? null : templateOf(earlier.picture);
  if (template === null) return { time, since: time, growth: 0, share: 0, u: UNKNOWN };
  return {
    ...shareLost(template, (observations[open - 1] as SealObservation).picture),
    time,
    since: times[open - 2] as number,
    growth: speed / Math.max(1, edge),
  };
}

/** A film that bulges on fills cells it only touched, and dust may show where it was: neither is a loss below 0 or above 1. */
function shareLost(template: FilmTemplate, picture: SealPicture): Loss {
  const { share, u } = lossSince(template, picture);
  return { share: Math.min(1, Math.max(0, share)), u };
}

/** How far the foremost piece is seen, as long as it comes forward freely and is in view. */
function flownFrom(
  { observations, times, open, surely }: Surroundings,
  edge: (i: number) => Pixels | null,
  whole: Pixels,
): ReachSeen[] {
  const flown: ReachSeen[] = [];
  let last = whole - FORWARD;
  for (let i = open; i < Math.min(observations.length, surely + OPEN_FRAMES); i++) {
    const reach = edge(i);
    const picture = observations[i]?.picture;
    if (reach === null || picture === undefined || reach < last) break;
    const seen = { time: times[i] as number, reach };
    if (stalls(flown, seen)) break;
    flown.push(seen);
    last = reach;
    if (reach > picture.columns * picture.cell - VIEW_END) break;
  }
  return flown;
}

/** Whether the foremost piece loses so much speed on the way to where it is seen `next` that it still hangs on the ring. */
function stalls(flown: readonly ReachSeen[], next: ReachSeen): boolean {
  const [a, b] = flown.slice(-2);
  if (a === undefined || b === undefined) return false;
  const speed = (from: ReachSeen, to: ReachSeen) => (to.reach - from.reach) / (to.time - from.time);
  return speed(b, next) < STALLED * speed(a, b);
}

/** Each step of the film's front over the one before, from the last whole frame on; none where it stands out too little. */
function stepsOf({ observations, times, open, surely }: Surroundings): FilmSteps[] {
  const steps: FilmSteps[] = [];
  for (let i = open - 1; i <= Math.min(surely, observations.length - 1); i++) {
    const [a, b, c] = [i - 2, i - 1, i].map((k) => observations[k]);
    const [ta, tb, tc] = [i - 2, i - 1, i].map((k) => times[k] as number) as [
      number,
      number,
      number,
    ];
    if (a === undefined || b === undefined || c === undefined) continue;
    // The first steps out of rest outgrow each other by any factor.
    if (Math.min(a.front, b.front) < READABLE) continue;
    const first = (b.front - a.front) / (tb - ta);
    if (first < READABLE_STEP) break;
    const ratio = (c.front - b.front) / (tc - tb) / first;
    const u = Math.hypot(c.frontU, b.frontU * (1 + ratio), a.frontU * ratio) / first;
    steps.push({ ratio, ratioU: u, time: tc });
  }
  return steps;
}
