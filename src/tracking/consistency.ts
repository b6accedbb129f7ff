import type { Reason } from '../core/reason';
import { DEVIATION_OVER_MEDIAN, median } from '../core/statistics';
import type { ImageVector, Pixels, Seconds } from '../core/units';
import { fitLinear } from '../fit/linear';
import { along } from './path';
import type { Path } from './types';

/** A measured centre on the flight plane, px and px^2. */
export interface MeasuredPlace {
  readonly frame: number;
  readonly time: Seconds;
  readonly x: Pixels;
  readonly y: Pixels;
  readonly varX: number;
  readonly varY: number;
  readonly covXY: number;
}

/** A place is off the path if it is this many standard deviations and this far from it. */
const MOST_SIGMAS = 5;
const MOST_OFF: Pixels = 0.3;
/** Fewer places do not tell which of them is off. */
const FEWEST = 6;
/** Numbers of places from which the path along the axis may bend more: a drag that dwindles, a push that ends at the muzzle. */
const FOR_CUBIC = 12;
const EACH_SIDE = 6;
const ROUNDS = 12;

/**
 * Places that do not lie on the smooth path of the others, along the axis or across it: a fragment taken for the ball,
 * a shadow's edge. Only gross errors: scatter of all places alike, whatever its cause, is not counted against any.
 * `rough` is the path the places were looked for along, `axis` a unit vector, `muzzleTime` when the ball passes the
 * muzzle, `radius` the ball's.
 */
export function offPath(
  places: readonly MeasuredPlace[],
  rough: Path,
  axis: ImageVector,
  muzzleTime: Seconds | null,
  radius: Pixels,
): Map<number, Reason> {
  const found = new Map<number, Reason>();
  if (places.length < FEWEST) return found;
  const [ux, uy] = axis;
  const lengthwise = smoothPath(
    places.map(({ x, y }) => x * ux + y * uy),
    places.map(({ varX, varY, covXY }) => ux * ux * varX + 2 * ux * uy * covXY + uy * uy * varY),
    places.map(({ time, x, y }) => {
      const [px, py] = along(rough, time);
      return (x - px) * ux + (y - py) * uy;
    }),
    bendsOf(places, muzzleTime),
    radius,
  );
  const sideways = smoothPath(
    places.map(({ x, y }) => y * ux - x * uy),
    places.map(({ varX, varY, covXY }) => uy * uy * varX - 2 * ux * uy * covXY + ux * ux * varY),
    places.map(({ time, x, y }) => {
      const [px, py] = along(rough, time);
      return (y - py) * ux - (x - px) * uy;
    }),
    scaledTimes(places).map((t) => [1, t, t * t]),
    radius,
  );
  if (lengthwise === null || sideways === null) return found;
  places.forEach(({ frame }, i) => {
    const a = lengthwise[i] as Departure;
    const b = sideways[i] as Departure;
    const far = (d: Departure) => Math.abs(d.off) > MOST_OFF && Math.abs(d.off) > MOST_SIGMAS * d.u;
    if (!far(a) && !far(b)) return;
    found.set(frame, {
      code: 'offPath',
      message: `In frame ${frame} what was measured lies ${Math.hypot(a.off, b.off).toFixed(1)} px off the path of the other frames: ${Math.abs(a.off) > Math.abs(b.off) ? 'along' : 'across'} the flight.`,
    });
  });
  return found;
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
function bendsOf(places: readonly MeasuredPlace[], muzzleTime: Seconds | null): number[][] {
  const scaled = scaledTimes(places);
  const cubic = places.length >= FOR_CUBIC;
  const before = places.filter(({ time }) => muzzleTime !== null && time < muzzleTime).length;
  const kinked = Math.min(before, places.length - before) >= EACH_SIDE;
  const kink = kinked ? (scaled[before] as number) : 0;
  return scaled.map((t) => [
    1,
    t,
    t * t,
    ...(cubic ? [t ** 3] : []),
    ...(kinked ? [Math.max(0, t - kink) ** 2] : []),
  ]);
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
  radius: Pixels,
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
  let reach = radius / 2;
  for (let round = 0; round < ROUNDS; round++) {
    const scatter = DEVIATION_OVER_MEDIAN * median(departures.map(({ off }) => Math.abs(off)));
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
