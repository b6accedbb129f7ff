import type { Clock } from '../clock/clock';
import { type Outcome, type Reason, success } from '../core/reason';
import type { FlightPoint } from '../exit/types';
import { type AxisFit, type FlightLine, fitAxis } from '../geometry/flightLine';
import type { MeasuredPoint, View } from '../geometry/view';
import type { CentreMeasurement } from '../image/types';
import type { Position } from '../shot/result';
import type { Shot } from '../shot/schema';

/** What is asked of a centre once it is known, however it became so. */
type KnownCentre = Pick<
  CentreMeasurement,
  'x' | 'y' | 'varX' | 'varY' | 'covXY' | 'visible' | 'saturated'
>;

/** A frame's centre, measured or placed by hand, before it is set on the flight axis. */
export interface Sighting {
  readonly frame: number;
  readonly manual: boolean;
  /** In the image, and on the flight plane. */
  readonly centre: Outcome<KnownCentre & { readonly flat: MeasuredPoint }>;
}

/** Measured centres with the edits of a person applied, in frame order. A point placed by hand replaces the measured one. */
export function sightings(
  centres: ReadonlyMap<number, Outcome<CentreMeasurement>>,
  edits: Shot['edits'],
  view: View,
): Sighting[] {
  const laid = (centre: KnownCentre): Sighting['centre'] => {
    const flat = view.flattenMeasured(centre);
    return flat.ok ? success({ ...centre, flat: flat.value }) : flat;
  };
  const all = new Map<number, Sighting>();
  for (const [frame, centre] of centres) {
    all.set(frame, { frame, manual: false, centre: centre.ok ? laid(centre.value) : centre });
  }
  for (const { frame, x, y, ux, uy } of edits.manualPoints) {
    const centre = { x, y, varX: ux * ux, varY: uy * uy, covXY: 0, visible: 1, saturated: 0 };
    all.set(frame, { frame, manual: true, centre: laid(centre) });
  }
  return [...all.values()].sort((a, b) => a.frame - b.frame);
}

/** Direction of travel on the flight plane from the sightings that have a centre. */
export function axisOfPath(kept: readonly Sighting[]): Outcome<AxisFit> {
  const points = kept.flatMap(({ centre }) =>
    centre.ok
      ? [
          {
            x: centre.value.flat.x,
            y: centre.value.flat.y,
            variance: (centre.value.flat.varX + centre.value.flat.varY) / 2,
          },
        ]
      : [],
  );
  return fitAxis(points);
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
  return seen.map(({ frame, manual, centre }) => {
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
        shift: [0, 0],
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
      shift: [0, 0],
      used: why === null,
      manual,
      why,
    };
  });
}
