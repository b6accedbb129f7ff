import { fitLinear } from '../fit/linear';
import type { Track } from '../tracking/types';
import type { Centres } from './judgeCentres';
import type { Scene } from './scene';
import { type Shake, steadied } from './shake';

/** Speed in a frame over the track's mean speed. */
export type Pace = (frame: number) => number;

/** The speed in a frame is that of the parabola through this many centres around it. */
const AROUND = 9;
/** Fewer centres than this do not tell a change of speed from their scatter. */
const FEWEST = 6;
/** A change by less than this is no matter to the blur; nor is one of fewer standard uncertainties. */
const LEAST_CHANGE = 0.01;
const SURE = 3;
/** Centres farther than this many standard uncertainties, or px, from a parabola: it is not their path. */
const FAR = 5;
const FAR_PX = 0.5;

/** How fast the ball is in each frame by the centres measured around it; 1 where they do not tell another speed. */
export function paceOf(centres: Centres, track: Track, scene: Scene, shake: Shake): Pace {
  const [ux, uy] = track.axis;
  const places = [...centres].flatMap(([frame, centre]) => {
    if (!centre.ok) return [];
    const { x, y } = centre.value;
    const flat = scene.scale.view.flattenMeasured(steadied(centre.value, shake.shiftIn(frame)));
    if (!flat.ok) return [];
    const { varX, varY, covXY } = flat.value;
    return [
      {
        frame,
        time: scene.clock.timeAt(frame, x, y),
        along: ux * flat.value.x + uy * flat.value.y,
        u: Math.sqrt(ux * ux * varX + 2 * ux * uy * covXY + uy * uy * varY),
      },
    ];
  });
  places.sort((a, b) => a.time - b.time);
  const paces = new Map<number, number>();
  return (frame) => {
    const known = paces.get(frame);
    if (known !== undefined) return known;
    const after = places.findIndex((place) => place.frame >= frame);
    const middle = after < 0 ? places.length - 1 : after;
    const from = Math.max(0, Math.min(places.length - AROUND, middle - (AROUND >> 1)));
    const pace = paceAmong(places.slice(from, from + AROUND), middle - from, track.speed);
    paces.set(frame, pace);
    return pace;
  };
}

interface PlaceInTime {
  readonly time: number;
  readonly along: number;
  readonly u: number;
}

/** Slope at one of the places of the parabola in time through all, over `speed`; 1 where it is not surely another. */
function paceAmong(places: readonly PlaceInTime[], at: number, speed: number): number {
  const here = places[at];
  const [first, last] = [places[0], places.at(-1)];
  if (places.length < FEWEST || !here || !first || !last || !(speed > 0)) return 1;
  // In units of the time between the ends: the columns are then alike in size, and the slope is the second parameter.
  const span = last.time - first.time;
  if (!(span > 0)) return 1;
  const times = places.map(({ time }) => (time - here.time) / span);
  const fit = fitLinear(
    Float64Array.from([...times.map(() => 1), ...times, ...times.map((t) => t * t)]),
    Float64Array.from(places, ({ along }) => along),
    Float64Array.from(places, ({ u }) => Math.max(u, 1e-6)),
  );
  if (!fit.covariance.ok) return 1;
  const strays = places.some(
    ({ u }, i) => Math.abs(fit.residuals[i] as number) > Math.max(FAR_PX, FAR * u),
  );
  const pace = (fit.parameters[1] as number) / span / speed;
  const scatter = Math.max(1, Math.sqrt(fit.chiSquare / fit.dof));
  const u = (scatter * Math.sqrt(fit.covariance.value[4] as number)) / span / speed;
  const change = Math.abs(pace - 1);
  return strays || change < LEAST_CHANGE || change < SURE * u ? 1 : pace;
}
