import type { Random } from '../core/random';
import { type Outcome, success } from '../core/reason';
import type { Metres, Pixels, Seconds } from '../core/units';
import { dragOf, muzzleLossOf, ZONE_PROFILES, zoneIn } from '../exit/drag';
import type { Setting } from '../exit/flight';
import { DRAG, LOSS, moveTo, nowhere, PARAMETERS, V0 } from '../exit/motion';
import { ballDrag } from '../exit/sphereDrag';
import { LEAST_VISIBLE } from '../image/centre';
import type { CentreMeasurement } from '../image/types';
import type { Scene } from '../reduction/scene';
import type { Plan } from '../shot/planning';
import { unsure } from '../tracking/unsure';
import { standardDraw } from '../uncertainty/draw';
import { centreNoise, type PlannedDisc } from './centreNoise';
import { ballRadius, metresPerPixel } from './plannedShot';

/** More frames than this are stood for by some of them, each told as much better. */
const MOST_FRAMES = 240;
/** Rounds of settling the line on which a moving ball is read; each leaves the ball's speed over the readout's. */
const READOUT_ROUNDS = 30;

/** A frame with the ball past the muzzle. */
export interface PlannedFrame {
  readonly frame: number;
  readonly x: Pixels;
  readonly y: Pixels;
  readonly alongU: Pixels;
  readonly acrossU: Pixels;
  readonly visible: number;
}

export interface PlannedFlight {
  /** Frames in which enough of the ball is in view. */
  readonly inView: number;
  /** Of these, the ones that stand for all. */
  readonly frames: readonly PlannedFrame[];
}

/**
 * A path that the ball may take: distance from the muzzle plane, m, at a time after the exit, s. What air and gas do is
 * drawn from what the estimator takes as known beforehand: drag, loss at the muzzle, its zone's shape and length.
 */
export function drawPath(
  speed: number,
  setting: Setting,
  random: Random,
): (time: Seconds) => Metres {
  const { profile } = ZONE_PROFILES[
    Math.floor(random.uniform() * ZONE_PROFILES.length)
  ] as (typeof ZONE_PROFILES)[number];
  const zone = zoneIn(profile, setting.diameter);
  const drag = ballDrag(setting, speed);
  const loss = muzzleLossOf(setting);
  const theta = new Float64Array(PARAMETERS);
  theta[V0] = speed;
  theta[DRAG] = dragOf(setting, drag.value + drag.u * standardDraw(random, drag.spread, null));
  theta[LOSS] = loss.value + loss.u * random.normal();
  const moved = nowhere();
  return (time) => {
    moveTo('quadraticDrag', theta, zone, time, moved);
    return moved.s;
  };
}

/** The ball on the picture: how large, how blurred, how well it stands out. */
export const plannedDisc = (
  plan: Plan,
  contrastToNoise: number,
): Omit<PlannedDisc, 'seenLeft' | 'seenRight'> => ({
  radius: ballRadius(plan),
  contrastToNoise,
  softness: plan.picture.softness,
  sweep: (plan.speed.value * plan.camera.exposure.value) / metresPerPixel(plan),
  coded: plan.picture.coded,
});

/**
 * Where the ball stands in the frames after its exit, and how well its centre will be known there. The first frame past
 * the muzzle plane shows it `phase` of a frame interval after the exit. The barrel's end hides what is behind it.
 */
export function layFlight(
  plan: Plan,
  { clock, muzzle }: Pick<Scene, 'clock' | 'muzzle'>,
  path: (time: Seconds) => Metres,
  contrastToNoise: number,
  phase: number,
): PlannedFlight {
  const scale = metresPerPixel(plan);
  const disc = plannedDisc(plan, contrastToNoise);
  const [muzzleX, y] = muzzle.point;
  const end = plan.camera.width - 0.5;
  const interval = clock.frameInterval;
  const line = (x: Pixels) => clock.lineAt(x, y) * clock.lineTime.value;
  const exit = line(muzzleX) + (1 - phase) * interval;
  const placeIn = (frame: number): Pixels => {
    let x = muzzleX;
    for (let round = 0; round < READOUT_ROUNDS; round++) {
      const next = muzzleX + path(clock.frameTime(frame) + line(x) - exit) / scale;
      const settled = Math.abs(next - x) < 1e-6;
      x = next;
      if (settled) break;
    }
    return x;
  };
  // The ball slows: what it would take at the exit's speed is a start, then frame by frame.
  const last = lastWithin((frame) => placeIn(frame) < end + disc.radius);
  const stride = Math.max(1, Math.ceil(last / MOST_FRAMES));
  const whole = centreNoise({ ...disc, seenLeft: disc.radius, seenRight: disc.radius });
  const frames: PlannedFrame[] = [];
  for (let frame = 1; frame <= last; frame += stride) {
    const x = placeIn(frame);
    if (x < muzzleX) continue;
    const [seenLeft, seenRight] = [x - muzzleX, end - x];
    const cut = Math.min(seenLeft, seenRight) < disc.radius;
    const { alongU, acrossU, visible } = cut
      ? centreNoise({ ...disc, seenLeft, seenRight })
      : whole;
    if (visible < LEAST_VISIBLE) continue;
    const share = Math.sqrt(stride);
    frames.push({ frame, x, y, alongU: alongU / share, acrossU: acrossU / share, visible });
  }
  const doubtful = unsure(
    frames.map(({ frame, alongU, acrossU }) => ({ frame, varX: alongU ** 2, varY: acrossU ** 2 })),
    disc.radius,
  );
  const kept = frames.filter(({ frame }) => !doubtful.has(frame));
  return { inView: kept.length * stride, frames: kept };
}

/** The last whole number from 0 that something still holds for, which at first does and then no more. */
function lastWithin(holds: (n: number) => boolean): number {
  let high = 1;
  while (holds(high) && high < MOST_TRIED) high *= 2;
  let low = 0;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}
/** Of frames; a ball that takes longer to cross the view is as good as standing still. */
const MOST_TRIED = 2 ** 20;

/** The frames as if measured: each centre off by what `normal` draws, in its standard uncertainties. */
export const measuredCentres = (
  { frames }: PlannedFlight,
  radius: Pixels,
  normal: () => number,
): Map<number, Outcome<CentreMeasurement>> =>
  new Map(
    frames.map(({ frame, x, y, alongU, acrossU, visible }) => [
      frame,
      success({
        ...{ x: x + alongU * normal(), y: y + acrossU * normal() },
        ...{ varX: alongU ** 2, varY: acrossU ** 2, covXY: 0, visible },
        ...{ radius: { value: radius, u: 0 }, contrast: 1, saturated: 0 },
      }),
    ]),
  );
