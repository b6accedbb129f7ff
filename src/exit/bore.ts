import { isAvailable, type Reported } from '../core/estimate';
import { failure, type Outcome, success } from '../core/reason';
import type { Warning } from '../shot/result';
import { distanceOf, type Setting } from './flight';
import { atmosphericForce, initialAcceleration } from './force';
import { BORE } from './motion';
import { type Fitted, quantityRead, read } from './reading';
import { allOf, MOST_SUPPLE, type Selection, withoutOutliers } from './selection';
import type { FlightPoint } from './types';

/** Fewer centres than this in the bore tell no acceleration there. */
const FEWEST_IN_BORE = 4;
/**
 * Stretch before the muzzle plane over which the acceleration is taken as constant, in ball diameters. The air that
 * follows the ball grows by a few hundredths of what moves over it, and the acceleration falls in proportion.
 */
const STRETCH = 3;

/** Specific gas constant of dry air, J/(kg K); moist air differs by less than a hundredth. */
const GAS_CONSTANT = 287.05;

/** What centres in the bore are held against before they are fitted. */
const ROUGHLY = { ...MOST_SUPPLE, motion: 'boreAndFlight' } as const;

/** Adds the centres just behind the muzzle plane to those of the free flight; failure `boreNotSeen`. */
export function withBore(
  flying: Selection,
  points: readonly FlightPoint[],
  nominal: Setting,
  robust: boolean,
): Outcome<Selection> {
  const seen = [...points]
    .sort((a, b) => a.frameTime - b.frameTime)
    .filter((point) => {
      const s = distanceOf(point, nominal);
      return s < 0 && s > -STRETCH * nominal.diameter;
    });
  const inBore = robust ? withoutStrays(seen, flying, nominal) : allOf(seen);
  const count = inBore.used.length;
  if (count < FEWEST_IN_BORE) {
    return failure(
      'boreNotSeen',
      `${count} usable centre${count === 1 ? ' is' : 's are'} known in the last ${STRETCH} ball diameters of the bore; the acceleration there needs at least ${FEWEST_IN_BORE}.`,
      'Film through a clear end of the tube, at a higher rate; the exit velocity does not need it.',
      { count, stretch: STRETCH, fewest: FEWEST_IN_BORE },
    );
  }
  const frames = new Set(seen.map(({ frame }) => frame));
  return success({
    used: [...inBore.used, ...flying.used],
    weights: Float64Array.from([...inBore.weights, ...flying.weights]),
    leftOut: [...flying.leftOut.filter(({ frame }) => !frames.has(frame)), ...inBore.leftOut],
  });
}

/** The centres in the bore without gross errors: what moves them all at once, a clear tube's wall say, is none. */
function withoutStrays(
  inBore: readonly FlightPoint[],
  flying: Selection,
  nominal: Setting,
): Selection {
  const loosened = inBore.map((point) => ({
    ...point,
    alongU: Math.hypot(point.alongU, ...(point.shifts ?? [])),
  }));
  const { used, weights, leftOut } = withoutOutliers(
    [...loosened, ...flying.used],
    nominal,
    ROUGHLY,
  );
  const weightOf = new Map(used.map(({ frame }, i) => [frame, weights[i] as number]));
  const kept = inBore.filter(({ frame }) => weightOf.has(frame));
  const frames = new Set(inBore.map(({ frame }) => frame));
  return {
    used: kept,
    weights: Float64Array.from(kept, ({ frame }) => weightOf.get(frame) as number),
    leftOut: leftOut.filter(({ frame }) => frames.has(frame)),
  };
}

const IMPLAUSIBLE_REMEDY =
  'Check the place of the muzzle plane; a clear tube may shift what is seen through its wall.';

/**
 * Mean acceleration over the last three ball diameters of the bore, read off a fit of bore and flight together, m/s^2.
 * Unavailable where its whole interval is beyond belief.
 */
export function boreAcceleration(fitted: Fitted, coverage: number): Reported {
  const found = quantityRead(
    read(fitted, (theta) => theta[BORE] as number),
    coverage,
  );
  const [low, high] = found.interval;
  if (high > 0 && low < mostInBore(fitted.nominal)) return found;
  const acceleration = found.value.toPrecision(3);
  return {
    unavailable: {
      code: 'boreImplausible',
      values: { acceleration },
      message: `The centres in the bore give ${acceleration} m/s², which the air outside cannot do to the ball.`,
      remedy: IMPLAUSIBLE_REMEDY,
    },
  };
}

/** What a person who has bore and flight fitted together should know before trusting the exit. */
export function boreWarnings(fitted: Fitted, coverage: number): Warning[] {
  const found = boreAcceleration(fitted, coverage);
  return isAvailable(found) ? [] : [{ ...found.unavailable, remedy: IMPLAUSIBLE_REMEDY }];
}

/** What the air outside does at most: its pressure, by density and temperature, on the ball with nothing ahead of it. */
const mostInBore = ({ density, temperature, diameter, mass }: Setting): number =>
  initialAcceleration(atmosphericForce(density * GAS_CONSTANT * temperature, diameter), mass);
