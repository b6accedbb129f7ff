import type { GreyFrame } from '../core/frame';
import type { ImagePoint, Pixels } from '../core/units';
import { visitAround } from './around';
import type { Shape } from './ballShape';
import { both, count, type Outline, RAYS, sectorOf } from './outline';
import type { Background, BallModel } from './types';

/** Width of the ring outside the soft edge that is looked at. */
const WIDTH: Pixels = 3;
/** Sectors to either side that a sector is judged with. */
const NEIGHBOURS = 3;
/** Within this share of the radius the ball's own brightness shows. */
const INNER = 0.8;
/** Something stands beside the ball where it changes the scene by this share of the ball's contrast ... */
const CHANGED_SHARE = 0.1;
/** ... and by so many standard deviations of the mean, with neighbouring pixels hanging together in fours. */
const CHANGED_SIGMAS = 4;
const TOGETHER = 4;
/** Share of the outline that must show against the bare scene for the rest to be left out. */
const LEAST_CLEAR = 0.6;
const ALL_CLEAR = new Uint8Array(RAYS).fill(1);

/**
 * Sectors of the outline (1) beyond which the bare scene shows. A shadow or a reflection that touches the ball changes
 * what its edge is told against: there the outline would be drawn towards it. `middle` is the ball's rough centre.
 */
export function bareBeside(
  frame: GreyFrame,
  { level, noise, faulty }: Background,
  gain: number,
  middle: ImagePoint,
  ball: BallModel,
  shape: Shape,
): Uint8Array {
  const sums = new Float64Array(RAYS);
  const variances = new Float64Array(RAYS);
  const pixels = new Float64Array(RAYS);
  let inner = 0;
  let squares = 0;
  visitAround(frame, middle, ball, shape, WIDTH, (p, qx, qy, beyond) => {
    if (faulty?.[p] === 1) return;
    const scene = gain * (level[p] as number);
    const change = (frame.data[p] as number) - scene;
    if (Math.sqrt(qx * qx + qy * qy) < INNER * ball.radius) {
      inner++;
      squares += change * change;
      return;
    }
    if (beyond < 0) return;
    const s = sectorOf(qx, qy);
    sums[s] = (sums[s] as number) + change;
    variances[s] = (variances[s] as number) + noise.readVariance + noise.gain * Math.max(0, scene);
    pixels[s] = (pixels[s] as number) + 1;
  });
  const contrast = Math.sqrt(squares / Math.max(1, inner));
  const around = (of: Float64Array, s: number) => {
    let sum = 0;
    for (let k = -NEIGHBOURS; k <= NEIGHBOURS; k++) sum += of[(s + k + RAYS) % RAYS] as number;
    return sum;
  };
  return Uint8Array.from(sums, (_, s) => {
    const n = around(pixels, s);
    if (n === 0) return 1;
    const change = Math.abs(around(sums, s)) / n;
    const u = Math.sqrt(TOGETHER * around(variances, s)) / n;
    return change > CHANGED_SHARE * contrast && change > CHANGED_SIGMAS * u ? 0 : 1;
  });
}

/**
 * Sectors that the outline may be taken from: those with the bare scene beside them; all where these show too little
 * of it, since what stands beside the ball is then taken for a veil over the scene.
 */
export function clearSectors(
  frame: GreyFrame,
  background: Background,
  gain: number,
  { middle, seen }: Outline,
  ball: BallModel,
  shape: Shape,
): Uint8Array {
  const bare = bareBeside(frame, background, gain, middle, ball, shape);
  return count(both(seen, bare)) >= LEAST_CLEAR * RAYS ? bare : ALL_CLEAR;
}
