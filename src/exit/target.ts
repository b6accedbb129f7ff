import type { Estimate, Unavailable } from '../core/estimate';
import { failure, type Outcome, success } from '../core/reason';
import { chiSquareCdf } from '../core/statistics';
import type { TargetReport } from '../shot/result';
import { responses } from './budget';
import { createEstimator } from './candidate';
import type { Choice } from './choice';
import { WIDE_DRAG, zoneIn } from './drag';
import { distanceOf, prepareFlight } from './flight';
import type { SharedInput } from './inputs';
import { DRAG, moveTo, nowhere, T0, V0 } from './motion';
import {
  type Fitted,
  minus,
  quantityRead,
  type Reading,
  type ReadOff,
  read,
  readingU,
  widened,
} from './reading';
import type { FlightPoint } from './types';

/** Fewer centres past the target than this tell no speed with its uncertainty. */
const FEWEST_AFTER = 3;
/** Scatter is called larger than stated where chance would give it less often than this. */
const SIGNIFICANCE = 0.05;
/**
 * Relative change of the drag coefficient with the logarithm of the speed, as a standard uncertainty: compressible
 * sphere correlations change by 0.16 to 0.35 of their value between Mach 0.3 and 0.6 (Loth, AIAA J. 46 (2008) 2219;
 * Miller and Bailey, J. Fluid Mech. 93 (1979) 449).
 */
const COEFFICIENT_SLOPE = 0.3;

/** Time (after the flight's reference) at which the centre is at `place`, m, or its speed there; not finite: never. */
function at(place: number, which: 'time' | 'speed'): ReadOff {
  const moved = nowhere();
  return (theta, { motion, zone }, { diameter }) => {
    let t = (theta[T0] as number) + place / (theta[V0] as number);
    for (let i = 0; i < 50; i++) {
      moveTo(motion, theta, zoneIn(zone, diameter), t, moved);
      if (!(moved.v > 0)) break;
      const step = (place - moved.s) / moved.v;
      t += step;
      if (Math.abs(step) * moved.v < 1e-12) return which === 'time' ? t : moved.v;
    }
    return Number.NaN;
  };
}

/** The same of the energy, J. */
const energyAt =
  (place: number): ReadOff =>
  (theta, candidate, setting) =>
    (setting.mass * at(place, 'speed')(theta, candidate, setting) ** 2) / 2;

/**
 * Time, speeds and energy at a stated distance, m along the flight from the muzzle plane. `after`: the centres past
 * what stands there, laid along their own path, distances counted on from the target's; or why there are none.
 */
export function targetReport(
  fitted: Fitted,
  after: Outcome<readonly FlightPoint[]>,
  distance: Estimate,
  coverage: number,
): TargetReport {
  const before = slowedByDrag(fitted);
  const reading = (of: (place: number) => ReadOff) => readAt(before, of, distance);
  const speed = reading((place) => at(place, 'speed'));
  const time = reading((place) => at(place, 'time'));
  if (!(Number.isFinite(readingU(speed)) && Number.isFinite(readingU(time)))) {
    return noTarget({
      code: 'targetNotReached',
      message: `The fitted flight does not reach the target, ${distance.value.toPrecision(3)} m from the muzzle plane, with its uncertainty.`,
      values: { distance: distance.value.toPrecision(3) },
      remedy: 'Check the distance of the target, or choose the automatic model.',
    });
  }
  // Beyond the view the drag coefficient may change as the ball slows.
  const slowing = slowingBeyond(before, distance.value);
  const v = speed.value;
  const change = (COEFFICIENT_SLOPE / 2) * slowing ** 2;
  const apart = Math.max(0, distance.value - lastSeen(before));
  const arrives = widened(speed, v * change + fitted.unmodelled);
  const arrivesAt = { ...time, value: time.value + before.flight.reference };
  const leaves = after.ok ? leaving(after.value, before) : after;
  const mass = before.nominal.mass;
  const lost = (beyond: Fitted) =>
    widened(
      minus(reading(energyAt), readAt(beyond, energyAt, distance)),
      mass * v * (v * change + fitted.unmodelled),
    );
  return {
    time: quantityRead(
      widened(
        arrivesAt,
        (apart / v) * (change / 2) + (distance.value / v ** 2) * fitted.unmodelled,
      ),
      coverage,
    ),
    speedBefore: quantityRead(arrives, coverage),
    speedAfter: leaves.ok
      ? quantityRead(
          readAt(leaves.value, (place) => at(place, 'speed'), distance),
          coverage,
        )
      : { unavailable: leaves.reason },
    energyGivenUp: leaves.ok
      ? quantityRead(lost(leaves.value), coverage)
      : { unavailable: leaves.reason },
  };
}

/** The report without any of it. */
export function noTarget(reason: Unavailable['unavailable']): TargetReport {
  const none = { unavailable: reason };
  return { time: none, speedBefore: none, speedAfter: none, energyGivenUp: none };
}

/** A reading at a place whose uncertainty counts as one more input that readings of one shot share. */
function readAt(
  fitted: Fitted,
  of: (place: number) => ReadOff,
  { value: place, u: placeU }: Estimate,
): Reading {
  const here = read(fitted, of(place));
  if (placeU === 0) return here;
  const input: SharedInput = {
    source: 'distance of the target',
    type: 'B',
    u: placeU,
    unit: 'm',
    dof: null,
    spread: 'normal',
    move: () => undefined,
  };
  const by = (read(fitted, of(place + placeU)).value - read(fitted, of(place - placeU)).value) / 2;
  return { ...here, moved: [...here.moved, { input, by }] };
}

/** The members that hold beyond the view: those whose drag goes with the square of the speed, where there are any. */
function slowedByDrag(fitted: Fitted): Fitted {
  const { choice, shared } = fitted;
  const kept = choice.members.flatMap(({ fit }, i) =>
    ['quadraticDrag', 'boreAndFlight'].includes(fit.candidate.motion) ? [i] : [],
  );
  if (kept.length === 0) return fitted;
  const total = kept.reduce((sum, i) => sum + (choice.members[i]?.weight ?? 0), 0);
  const members = choice.members.flatMap((member, i) =>
    kept.includes(i) ? [{ ...member, weight: member.weight / total }] : [],
  );
  const only = (thetas: readonly Float64Array[]) => thetas.filter((_, i) => kept.includes(i));
  return {
    ...fitted,
    choice: { ...choice, members },
    shared: shared.map(({ input, up, down }) => ({ input, up: only(up), down: only(down) })),
  };
}

const lastSeen = ({ flight, nominal }: Fitted): number =>
  Math.max(...flight.points.map((point) => distanceOf(point, nominal)));

/** Logarithm by which drag slows the ball between the last centre and a place beyond it. */
function slowingBeyond(fitted: Fitted, place: number): number {
  const drag = read(fitted, (theta) => theta[DRAG] as number).value;
  return Math.max(0, drag * (place - lastSeen(fitted)));
}

/** The flight past the target, fitted by itself: quadratic drag bounded as any ball's. */
function leaving(points: readonly FlightPoint[], { nominal, shared }: Fitted): Outcome<Fitted> {
  if (points.length < FEWEST_AFTER) {
    return failure(
      'nothingAfterTarget',
      `${points.length} usable frame${points.length === 1 ? ' shows' : 's show'} the ball past the target; its speed there needs at least ${FEWEST_AFTER}.`,
      'Widen the view beyond the target, or place missing centres by hand.',
      { frames: points.length, fewest: FEWEST_AFTER },
    );
  }
  const flight = prepareFlight(points, nominal);
  const start = Float64Array.of(flight.start.t0, flight.start.v0, 0, 0, 0);
  const candidate = { motion: 'quadraticDrag', dragCoefficient: WIDE_DRAG, zone: null } as const;
  const first = createEstimator(candidate, flight, nominal, 1).fit(nominal, start);
  if (!first.ok) return first;
  const { chiSquare, dof } = first.value;
  const sigmaScale = Math.sqrt(Math.max(1, chiSquare / dof));
  const estimator = createEstimator(candidate, flight, nominal, sigmaScale);
  const fit = estimator.fit(nominal, start);
  if (!fit.ok) return fit;
  const member = { estimator, fit: fit.value, weight: 1 };
  const choice: Choice = {
    members: [member],
    best: member,
    compared: [],
    checks: [],
    speedsUp: false,
    sigmaScale,
    noiseDof: 1 - chiSquareCdf(chiSquare, dof) < SIGNIFICANCE ? dof : null,
  };
  const moved = responses(
    choice.members,
    nominal,
    shared.map(({ input }) => input),
  );
  if (!(moved !== null && (fit.value.theta[V0] as number) > 0)) {
    return failure(
      'notLeavingTarget',
      'The centres past the target do not move away from it.',
      'Check the distance of the target and which object was followed.',
    );
  }
  return success({ choice, flight, nominal, shared: moved, unmodelled: 0 });
}

/**
 * Index from which on centres in time order, at distances from the muzzle plane, have met what stands at `distance`:
 * from the first whose leading point is there, whichever way the ball goes on.
 */
export function firstAtTarget(
  distances: readonly number[],
  distance: number,
  ballRadius: number,
): number {
  const first = distances.findIndex((s) => s > distance - ballRadius);
  return first < 0 ? distances.length : first;
}
