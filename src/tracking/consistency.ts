import type { Reason } from '../core/reason';
import { DEVIATION_OVER_MEDIAN, median } from '../core/statistics';
import type { ImagePoint, ImageVector, Pixels, Seconds } from '../core/units';
import { fitLinear } from '../fit/linear';

/** A measured centre on the flight plane, px and px^2. */
export interface MeasuredPlace {
  readonly frame: number;
  readonly time: Seconds;
  readonly x: Pixels;
  readonly y: Pixels;
  readonly varX: number;
  readonly varY: number;
  readonly covXY: number;
  /** Where the track has the ball then. */
  readonly expected: ImagePoint;
}

/**
 * A place is off the path if it is this many standard deviations (of both directions together) and this far from it;
 * fewer are enough where it is farther. Good places pass the second limit in 15 of 10 000 cases at most.
 */
const LIMITS = [
  { sigmas: 5, off: 0.3 },
  { sigmas: 3.6, off: 0.7 },
] as const;
const [{ sigmas: MOST_SIGMAS, off: MOST_OFF }] = LIMITS;
/** A track is never as far off the ball as this, in radii: what lies farther is another thing, its shadow say. */
const STRAYED = 0.5;
/** Fewer places do not tell which of them is off. */
const FEWEST = 6;
/** Frames lost or repeated at once, and how exactly a departure must be that of so many frames: px, and share of it. */
const MOST_SLIP = 5;
const SLIP_PX: Pixels = 0.5;
const SLIP = 0.05;
/** Share of the places up to the path's end that must have jumped by the same number of frames. */
const ALIKE_SHARE = 1 / 3;
/** Places agree with a path within this many radii, but at least px. */
const AGREES = 0.06;
const AGREES_PX: Pixels = 1;
/** Places of which three at a time make the paths tried. */
const GRID = 12;
/** Places on each side of the muzzle from which the push may be seen to end there. */
const EACH_SIDE = 6;
const ROUNDS = 12;

/**
 * Places that do not lie on the smooth path of the others, along the axis or across it: a fragment taken for the ball,
 * a shadow's edge. Only gross errors: scatter of all places alike, whatever its cause, is not counted against any.
 * `all` places in order of time; `axis` a unit vector, `muzzleTime` when the ball passes the muzzle, `radius` the ball's.
 */
export function offPath(
  all: readonly MeasuredPlace[],
  [ux, uy]: ImageVector,
  muzzleTime: Seconds | null,
  radius: Pixels,
): Map<number, Reason> {
  const found = new Map<number, Reason>();
  const step = stepOf(all, [ux, uy]);
  const strayed = ({ x, y, expected }: MeasuredPlace) => {
    const along = (x - expected[0]) * ux + (y - expected[1]) * uy;
    const across = (y - expected[1]) * ux - (x - expected[0]) * uy;
    // The track of a film with frames lost runs between its two pieces.
    return Math.hypot(Math.max(0, Math.abs(along) - step), across) > STRAYED * radius;
  };
  const reach = (STRAYED * radius).toFixed(0);
  for (const { frame } of all.filter(strayed)) {
    found.set(frame, {
      code: 'offPath',
      message: `What was measured in frame ${frame} is not what was followed: it lies more than ${reach} px beside it.`,
      values: { form: 'strayed', frame, off: reach },
    });
  }
  const places = all.filter((place) => !strayed(place));
  if (places.length < FEWEST) return found;
  const times = scaledTimes(places);
  const ways = places.map(({ x, y }) => x * ux + y * uy);
  const asides = places.map(({ x, y }) => y * ux - x * uy);
  const usualVariance = median(places.map(({ varX, varY }) => (varX + varY) / 2));
  const near = Math.max(AGREES_PX, AGREES * radius, MOST_SIGMAS * Math.sqrt(usualVariance));
  const [startAlong, startAcross] = agreedPath(times, ways, asides, near);
  const lengthwise = smoothPath(
    ways,
    places.map(({ varX, varY, covXY }) => ux * ux * varX + 2 * ux * uy * covXY + uy * uy * varY),
    startAlong,
    bendsOf(places, times, muzzleTime),
    near,
  );
  const sideways = smoothPath(
    asides,
    places.map(({ varX, varY, covXY }) => uy * uy * varX - 2 * ux * uy * covXY + ux * ux * varY),
    startAcross,
    times.map((t) => [1, t, t * t]),
    near,
  );
  if (lengthwise === null || sideways === null) return found;
  const slips = places.map((_, i) =>
    slipOf(lengthwise[i] as Departure, sideways[i] as Departure, step),
  );
  places.forEach(({ frame }, i) => {
    const a = lengthwise[i] as Departure;
    const b = sideways[i] as Departure;
    if (!isFar(a, b) || isFaultOfTime(slips, i)) return;
    const way = Math.abs(a.off) > Math.abs(b.off) ? 'along' : 'across';
    const off = Math.hypot(a.off, b.off).toFixed(1);
    found.set(frame, {
      code: 'offPath',
      values: { form: way, frame, off },
      message: `What was measured in frame ${frame} lies ${off} px off the path of the other frames, ${way} the flight.`,
    });
  });
  return found;
}

/** Way along the axis from frame to frame. */
function stepOf(places: readonly MeasuredPlace[], [ux, uy]: ImageVector): Pixels {
  const steps = places.slice(1).map((after, i) => {
    const before = places[i] as MeasuredPlace;
    const way = (after.x - before.x) * ux + (after.y - before.y) * uy;
    return way / (after.frame - before.frame);
  });
  return steps.length === 0 ? 0 : median(steps);
}

function isFar(a: Departure, b: Departure): boolean {
  const distance = Math.hypot(a.off, b.off);
  const deviations = Math.hypot(a.off / a.u, b.off / b.u);
  return LIMITS.some(({ sigmas, off }) => deviations >= sigmas && distance >= off);
}

/** The whole number of frames a departure is that of; 0: on the path; null: off it otherwise. */
function slipOf(along: Departure, across: Departure, step: Pixels): number | null {
  if (!isFar(along, across)) return 0;
  const frames = Math.round(along.off / step);
  const aside = Math.abs(across.off) >= Math.max(MOST_OFF, MOST_SIGMAS * across.u);
  const inexact = Math.abs(along.off - frames * step) >= SLIP_PX + SLIP * Math.abs(frames * step);
  return frames === 0 || Math.abs(frames) > MOST_SLIP || aside || inexact ? null : frames;
}

/** Frames lost or repeated: the path jumps by whole steps up to its end or from its beginning; or one frame shows the last again. */
function isFaultOfTime(slips: readonly (number | null)[], i: number): boolean {
  const slip = slips[i];
  if (slip === null || slip === 0) return false;
  // Another thing's speed takes it through ever other numbers of steps.
  const jumped = (side: readonly (number | null)[]) =>
    side.every((other) => other !== 0) &&
    side.filter((other) => other === slip).length >= ALIKE_SHARE * side.length;
  return (
    jumped(slips.slice(i)) ||
    jumped(slips.slice(0, i + 1)) ||
    (slip === -1 && slips[i - 1] === 0 && slips[i + 1] === 0)
  );
}

/** Distances, along and across, from the parabola in time through three of the places that most others agree with. */
function agreedPath(
  times: readonly number[],
  ways: readonly number[],
  asides: readonly number[],
  near: Pixels,
): [number[], number[]] {
  const n = times.length;
  const grid = Array.from({ length: Math.min(n, GRID) }, (_, k, of = Math.min(n, GRID)) =>
    Math.round((k * (n - 1)) / (of - 1)),
  );
  const distancesFrom = (values: readonly number[], a: number, b: number, c: number) => {
    const at = (k: number) => times[k] as number;
    const slope = (p: number, q: number) =>
      ((values[q] as number) - (values[p] as number)) / (at(q) - at(p));
    const first = slope(a, b);
    const second = (slope(b, c) - first) / (at(c) - at(a));
    return values.map(
      (value, k) =>
        value - (values[a] as number) - (at(k) - at(a)) * (first + second * (at(k) - at(b))),
    );
  };
  let most = -1;
  let best: [number[], number[]] = [[], []];
  for (const [i, a] of grid.entries()) {
    for (const [j, b] of grid.entries()) {
      for (const c of j > i ? grid.slice(j + 1) : []) {
        const along = distancesFrom(ways, a, b, c);
        const across = distancesFrom(asides, a, b, c);
        let agreement = 0;
        for (let k = 0; k < n; k++) {
          const d = Math.hypot(along[k] as number, across[k] as number) / near;
          if (d < 1) agreement += 1 - d * d;
        }
        if (agreement > most) {
          most = agreement;
          best = [along, across];
        }
      }
    }
  }
  return best;
}

/** Distance of a place from the path of all others, and its standard uncertainty. */
interface Departure {
  readonly off: Pixels;
  readonly u: Pixels;
}

/** Times from about -1 to 1. */
function scaledTimes(places: readonly MeasuredPlace[]): number[] {
  const times = places.map(({ time }) => time);
  const low = Math.min(...times);
  const high = Math.max(...times);
  return times.map((time) => (2 * (time - low)) / (high - low || 1) - 1);
}

/** Rows of the terms that the way along the axis is made of. */
function bendsOf(
  places: readonly MeasuredPlace[],
  times: readonly number[],
  muzzleTime: Seconds | null,
): number[][] {
  const before = places.filter(({ time }) => muzzleTime !== null && time < muzzleTime).length;
  const kinked = Math.min(before, places.length - before) >= EACH_SIDE;
  const kink = kinked ? (times[before] as number) : 0;
  return times.map((t) => [1, t, t * t, ...(kinked ? [Math.max(0, t - kink) ** 2] : [])]);
}

/**
 * Departures from a robust least-squares fit of `terms` to `values`, each from the fit without itself. `start`: how far
 * off they are beforehand, which tells gross errors from the rest at first.
 */
function smoothPath(
  values: readonly number[],
  variances: readonly number[],
  start: readonly number[],
  terms: readonly (readonly number[])[],
  near: Pixels,
): Departure[] | null {
  const n = values.length;
  const p = terms[0]?.length ?? 0;
  if (n < p + 2) return null;
  const design = new Float64Array(n * p);
  terms.forEach((row, i) => {
    row.forEach((term, j) => {
      design[j * n + i] = term;
    });
  });
  const observed = Float64Array.from(values);
  const usualVariance = median(variances);
  let departures: Departure[] = start.map((off) => ({ off, u: 0 }));
  let reach = 2 * near;
  for (let round = 0; round < ROUNDS; round++) {
    const usual = DEVIATION_OVER_MEDIAN * median(departures.map(({ off }) => Math.abs(off)));
    // More is no scatter: half of the places are another thing's.
    const scatter = Math.min(usual, near);
    const shared = Math.max(0, scatter * scatter - usualVariance);
    const cut = Math.max(reach, MOST_OFF, MOST_SIGMAS * scatter);
    const sigmas = Float64Array.from(departures, ({ off }, i) => {
      const share = Math.min(0.9999, Math.abs(off) / cut);
      return Math.sqrt((variances[i] as number) + shared + 1e-6) / (1 - share * share);
    });
    const fit = fitLinear(design, observed, sigmas);
    if (!fit.covariance.ok) return null;
    const covariance = fit.covariance.value;
    departures = Array.from({ length: n }, (_, i) => {
      const row = terms[i] as readonly number[];
      let lever = 0;
      row.forEach((a, j) => {
        row.forEach((b, k) => {
          lever += a * b * (covariance[j * p + k] as number);
        });
      });
      const left = Math.max(1e-6, 1 - lever / (sigmas[i] as number) ** 2);
      return {
        off: (fit.residuals[i] as number) / left,
        u: Math.sqrt(((variances[i] as number) + shared + 1e-6) / left),
      };
    });
    reach /= 2;
  }
  return departures;
}
