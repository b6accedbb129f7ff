import type { Reported } from '../core/estimate';
import { failure, type Outcome, success } from '../core/reason';
import { mostInBore } from './boreLimit';
import { distanceOf, type Setting } from './flight';
import { BORE } from './motion';
import { type Fitted, quantityRead, read } from './reading';
import type { Selection } from './selection';
import type { FlightPoint } from './types';

/** Fewer centres than this in the bore tell no acceleration there. */
const FEWEST_IN_BORE = 4;
/**
 * Stretch before the muzzle plane over which the acceleration is taken as constant, in ball diameters. The air that
 * follows the ball grows by a few hundredths of what moves over it, and the acceleration falls in proportion.
 */
const STRETCH = 3;

/** Adds the centres just behind the muzzle plane to those of the free flight; failure `boreNotSeen`. */
export function withBore(
  flying: Selection,
  points: readonly FlightPoint[],
  nominal: Setting,
): Outcome<Selection> {
  const inBore = [...points]
    .sort((a, b) => a.frameTime - b.frameTime)
    .filter((point) => {
      const s = distanceOf(point, nominal);
      return s < 0 && s > -STRETCH * nominal.diameter;
    });
  if (inBore.length < FEWEST_IN_BORE) {
    return failure(
      'boreNotSeen',
      `${inBore.length} centre${inBore.length === 1 ? ' is' : 's are'} known in the last ${STRETCH} ball diameters of the bore; the acceleration there needs at least ${FEWEST_IN_BORE}.`,
      'Film through a clear end of the tube, at a higher rate; the exit velocity does not need it.',
    );
  }
  const frames = new Set(inBore.map(({ frame }) => frame));
  return success({
    used: [...inBore, ...flying.used],
    weights: Float64Array.from([...inBore.map(() => 1), ...flying.weights]),
    leftOut: flying.leftOut.filter(({ frame }) => !frames.has(frame)),
  });
}

/** Acceleration in the bore read off a fit of bore and flight together, m/s^2. */
export function boreAcceleration(fitted: Fitted, coverage: number): Reported {
  const found = quantityRead(
    read(fitted, (theta) => theta[BORE] as number),
    coverage,
  );
  const [low, high] = found.interval;
  if (high > 0 && low < mostInBore(fitted.nominal)) return found;
  return {
    unavailable: {
      code: 'boreImplausible',
      message: `The centres in the bore give ${found.value.toPrecision(3)} m/s², which the air outside cannot do to the ball.`,
      remedy:
        'Check the place of the muzzle plane; a clear tube may shift what is seen through its wall.',
    },
  };
}
