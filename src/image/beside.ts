import type { GreyFrame } from '../core/frame';
import type { ImagePoint, Pixels } from '../core/units';
import type { Shape } from './ballShape';
import { bandWidth } from './discPixels';
import { SIGMA_PRIOR } from './discPriors';
import { RAYS } from './outline';
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

/**
 * Sectors of the outline (1) beyond which the bare scene shows. A shadow or a reflection that touches the ball changes
 * what its edge is told against: there the outline would be drawn towards it. `middle` is the ball's rough centre.
 */
export function bareBeside(
  frame: GreyFrame,
  { level, noise, faulty }: Background,
  gain: number,
  [mx, my]: ImagePoint,
  { radius, blur, look }: BallModel,
  [a, b, c, d]: Shape,
): Uint8Array {
  const band = bandWidth({ sigma: look?.sigma ?? SIGMA_PRIOR.value });
  const reach = 1.08 * radius + band + WIDTH;
  const halfX = Math.ceil(reach + Math.abs(blur[0]) / 2);
  const halfY = Math.ceil(reach + Math.abs(blur[1]) / 2);
  const sums = new Float64Array(RAYS);
  const variances = new Float64Array(RAYS);
  const pixels = new Float64Array(RAYS);
  let inner = 0;
  let squares = 0;
  const y1 = Math.min(frame.height - 1, Math.ceil(my) + halfY);
  const x1 = Math.min(frame.width - 1, Math.ceil(mx) + halfX);
  for (let y = Math.max(0, Math.floor(my) - halfY); y <= y1; y++) {
    for (let x = Math.max(0, Math.floor(mx) - halfX); x <= x1; x++) {
      const p = y * frame.width + x;
      if (faulty?.[p] === 1) continue;
      const qx = a * (x - mx) + b * (y - my);
      const qy = c * (x - mx) + d * (y - my);
      const r = Math.sqrt(qx * qx + qy * qy);
      const scene = gain * (level[p] as number);
      const change = (frame.data[p] as number) - scene;
      if (r < INNER * radius) {
        inner++;
        squares += change * change;
        continue;
      }
      const spread = Math.abs(qx * blur[0] + qy * blur[1]) / (2 * r);
      const beyond = r - radius - spread - band;
      if (beyond < 0 || beyond > WIDTH) continue;
      const s = Math.round((Math.atan2(qy, qx) / (2 * Math.PI)) * RAYS + RAYS) % RAYS;
      sums[s] = (sums[s] as number) + change;
      variances[s] =
        (variances[s] as number) + noise.readVariance + noise.gain * Math.max(0, scene);
      pixels[s] = (pixels[s] as number) + 1;
    }
  }
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
