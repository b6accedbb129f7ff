import type { Estimate } from '../core/estimate';
import { failure, type Outcome, success } from '../core/reason';
import { zoneIn } from './drag';
import { type Moved, moveTo, nowhere } from './motion';
import { type Fitted, type ReadOff, read, readingU } from './reading';
import type { FittedPath } from './types';

/** The averaged path with every input's effect on it. */
export function fittedPath(fitted: Fitted): FittedPath {
  const { choice, flight } = fitted;
  const moved: Moved = nowhere();
  const at =
    (t: number, which: 's' | 'v'): ReadOff =>
    (theta, { motion, zone }, { diameter }) => {
      moveTo(motion, theta, zoneIn(zone, diameter), t, moved);
      return moved[which];
    };
  const mean = (of: ReadOff): number =>
    choice.members.reduce(
      (sum, { fit, weight }) => sum + weight * of(fit.theta, fit.candidate, fitted.nominal),
      0,
    );

  const stateAt: FittedPath['at'] = (time) => {
    const t = time - flight.reference;
    const s = read(fitted, at(t, 's'));
    const v = read(fitted, at(t, 'v'));
    return { s: s.value, sU: readingU(s), v: v.value, vU: readingU(v) };
  };

  const timeAt = (s: number): Outcome<Estimate> => {
    let t = flight.start.t0;
    for (let i = 0; i < 50; i++) {
      const place = mean(at(t, 's'));
      const speed = mean(at(t, 'v'));
      if (!(speed > 0 && Number.isFinite(place))) break;
      const step = (s - place) / speed;
      t += step;
      if (Math.abs(step) * speed < 1e-12) {
        const { v, sU } = stateAt(t + flight.reference);
        return success({ value: t + flight.reference, u: sU / v });
      }
    }
    return failure(
      'placeNotReached',
      `The fitted path never reaches ${s.toPrecision(3)} m from the muzzle plane.`,
      'Ask for a place on the filmed stretch of the flight.',
      { distance: s.toPrecision(3) },
    );
  };

  const meanSpeed: FittedPath['meanSpeed'] = (times, shares) => {
    const { value, own, moved } = read(fitted, (theta, candidate, setting) =>
      times.reduce(
        (sum, time, i) =>
          sum + (shares[i] as number) * at(time - flight.reference, 'v')(theta, candidate, setting),
        0,
      ),
    );
    return {
      value,
      ownU: Math.hypot(...own.map(({ contribution }) => contribution)),
      dof: choice.noiseDof,
      moved: moved.map(({ by }) => by),
    };
  };

  return { at: stateAt, timeAt, meanSpeed };
}
