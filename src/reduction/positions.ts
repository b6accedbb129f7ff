import type { Clock } from '../clock/clock';
import { type Outcome, type Reason, success } from '../core/reason';
import type { FlightPoint } from '../exit/types';
import { fitLineBoth } from '../fit/lineBoth';
import { type AxisFit, type FlightLine, fitAxis } from '../geometry/flightLine';
import type { MeasuredPoint, View } from '../geometry/view';
import type { Shift } from '../image/registration';
import type { CentreMeasurement } from '../image/types';
import type { Position } from '../shot/result';
import type { Shot } from '../shot/schema';
import type { MeasuredFilm } from './measureFilm';
import { steadied } from './shake';

/** What is asked of a centre once it is known, however it became so. */
type KnownCentre = Pick<
  CentreMeasurement,
  'x' | 'y' | 'varX' | 'varY' | 'covXY' | 'visible' | 'saturated'
>;

/** A frame's centre, measured or placed by hand, before it is set on the flight axis. */
export interface Sighting {
  readonly frame: number;
  readonly manual: boolean;
  /** How far the scene stands off in this frame. */
  readonly shift: Shift;
  /** In the image as it is, and on the flight plane with the scene's shift taken off; both carry its uncertainty. */
  readonly centre: Outcome<KnownCentre & { readonly flat: MeasuredPoint }>;
}

/** Measured centres with the edits of a person applied, in frame order. A point placed by hand replaces the measured one. */
export function sightings(
  { centres, shake }: Pick<MeasuredFilm, 'centres' | 'shake'>,
  edits: Shot['edits'],
  view: View,
): Sighting[] {
  const sighting = (frame: number, manual: boolean, centre: Outcome<KnownCentre>): Sighting => {
    const shift = shake.shiftIn(frame);
    if (!centre.ok) return { frame, manual, shift, centre };
    const still = steadied(centre.value, shift);
    const flat = view.flattenMeasured(still);
    const { x, y } = centre.value;
    return {
      frame,
      manual,
      shift,
      centre: flat.ok ? success({ ...still, x, y, flat: flat.value }) : flat,
    };
  };
  const all = new Map<number, Sighting>();
  for (const [frame, centre] of centres) {
    all.set(frame, sighting(frame, false, centre));
  }
  for (const { frame, x, y, ux, uy } of edits.manualPoints) {
    const centre = { x, y, varX: ux * ux, varY: uy * uy, covXY: 0, visible: 1, saturated: 0 };
    all.set(frame, sighting(frame, true, success(centre)));
  }
  return [...all.values()].sort((a, b) => a.frame - b.frame);
}

/** Direction of travel on the flight plane from the sightings that have a centre, each with its whole covariance. */
export function axisOfPath(kept: readonly Sighting[]): Outcome<AxisFit> {
  const points = kept.flatMap(({ centre }) => (centre.ok ? [centre.value.flat] : []));
  const rough = fitAxis(
    points.map(({ x, y, varX, varY }) => ({ x, y, variance: (varX + varY) / 2 })),
  );
  const [origin] = points;
  if (!rough.ok || origin === undefined) return rough;
  const [ax, ay] = rough.value.axis;
  // Along the rough axis and across it: from there the line is nearly level.
  const turned = points.map(({ x, y, varX, varY, covXY }) => ({
    x: (x - origin.x) * ax + (y - origin.y) * ay,
    y: (y - origin.y) * ax - (x - origin.x) * ay,
    varX: ax * ax * varX + ay * ay * varY + 2 * ax * ay * covXY,
    varY: ay * ay * varX + ax * ax * varY - 2 * ax * ay * covXY,
    covXY: ax * ay * (varY - varX) + (ax * ax - ay * ay) * covXY,
  }));
  const line = fitLineBoth(turned, 0);
  if (!line.ok) return rough;
  const { slope, slopeU, chiSquare, dof } = line.value;
  const length = Math.hypot(1, slope);
  // A path that scatters more than its centres' uncertainty says is known less well by that much.
  const excess = dof > 0 ? Math.max(1, chiSquare / dof) : 1;
  return success({
    axis: [(ax - slope * ay) / length, (ay + slope * ax) / length],
    angleU: (slopeU * Math.sqrt(excess)) / length ** 2,
  });
}

const REJECTED_BY_HAND: Reason = {
  code: 'rejectedByHand',
  message: 'Taken out by hand.',
};

/** The estimator's points: every sighting that has a centre. */
export function flightPoints(
  kept: readonly Sighting[],
  line: FlightLine,
  clock: Clock,
): FlightPoint[] {
  return kept.flatMap(({ frame, centre }) => {
    if (!centre.ok) return [];
    const { x, y, flat } = centre.value;
    return [
      {
        frame,
        frameTime: clock.frameTime(frame),
        line: clock.lineAt(x, y),
        along: line.along(flat.x, flat.y),
        alongU: line.alongU(flat.varX, flat.varY, flat.covXY),
        timeU: clock.frameTimeU,
      },
    ];
  });
}

/** Positions as reported: each with its place, and why it was not used where it was not. */
export function reportPositions(
  seen: readonly Sighting[],
  rejected: ReadonlySet<number>,
  leftOut: ReadonlyMap<number, Reason>,
  line: FlightLine,
  clock: Clock,
  metresPerPixel: number,
): Position[] {
  return seen.map(({ frame, manual, shift, centre }) => {
    if (!centre.ok) {
      return {
        frame,
        time: clock.frameTime(frame),
        x: null,
        y: null,
        ux: null,
        uy: null,
        cov: null,
        s: null,
        us: null,
        visible: 0,
        shift: [shift.x, shift.y],
        used: false,
        manual,
        why: centre.reason,
      };
    }
    const { x, y, varX, varY, covXY, visible, flat } = centre.value;
    const why = rejected.has(frame) ? REJECTED_BY_HAND : (leftOut.get(frame) ?? null);
    return {
      frame,
      time: clock.timeAt(frame, x, y),
      x,
      y,
      ux: Math.sqrt(varX),
      uy: Math.sqrt(varY),
      cov: covXY,
      s: line.along(flat.x, flat.y) * metresPerPixel,
      us: line.alongU(flat.varX, flat.varY, flat.covXY) * metresPerPixel,
      visible,
      shift: [shift.x, shift.y],
      used: why === null,
      manual,
      why,
    };
  });
}
