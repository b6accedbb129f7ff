import type { GreyFrame } from '../core/frame';
import type { ImagePoint, Pixels } from '../core/units';
import { softEdge, visitAround } from './around';
import type { Shape } from './ballShape';
import { sectorOf } from './outline';
import { createRobustFit } from './robustFit';
import type { Background, BallModel } from './types';

/** Width of the ring around the ball that shows what lies over the scene there: px, and share of the radius. */
const WIDTH: Pixels = 6;
const WIDTH_SHARE = 0.5;
/** Harmonic functions up to the third order: the smoothest inside that agree with the ring. */
const TERMS = 7;
const ROUNDS = 8;
/** Fewer pixels of the ring in the picture tell too little. */
const FEWEST_PIXELS = 100;
/**
 * A veil counts where its root mean square is so many times what noise would make of it, with neighbouring pixels
 * hanging together in fours.
 */
const TIMES_NOISE = 6;
/** Of each eighth of the ring this share must agree with it, to so many deviations; or something else is there. */
const EIGHTHS = 8;
const AGREEING = 0.5;
const AGREES = 3;

/**
 * The background as it shows around the ball in this frame: mist between, or light that falls otherwise, changes it
 * smoothly, and the outline would be sought at the wrong level. Told by the ring outside the soft edge of a disc near
 * `middle`, in the `clear` sectors, and carried on inwards; as it is where the ring tells of nothing, or of things with edges.
 */
export function behindVeil(
  frame: GreyFrame,
  background: Background,
  gain: number,
  middle: ImagePoint,
  ball: BallModel,
  shape: Shape,
  clear: Uint8Array,
): Background {
  const { level, noise, faulty } = background;
  const width = Math.max(WIDTH, WIDTH_SHARE * ball.radius);
  const unit = ball.radius + softEdge(ball) + width / 2;
  const terms = new Float64Array(TERMS);
  const ring: number[] = [];
  const rows: number[] = [];
  const eighths: number[] = [];
  const within: number[] = [];
  visitAround(frame, middle, ball, shape, width, (p, qx, qy, beyond) => {
    within.push(p);
    if (beyond < 0 || faulty?.[p] === 1 || clear[sectorOf(qx, qy)] === 0) return;
    harmonics(qx / unit, qy / unit, terms);
    ring.push(p);
    rows.push(...terms);
    eighths.push(Math.floor(((Math.atan2(qy, qx) / (2 * Math.PI) + 1) * EIGHTHS) % EIGHTHS));
  });
  const n = ring.length;
  if (n < FEWEST_PIXELS) return background;
  let meanLevel = 0;
  for (const p of ring) meanLevel += (gain * (level[p] as number)) / n;
  const least = Math.sqrt(noise.readVariance + noise.gain * Math.max(0, meanLevel));
  const fit = createRobustFit(TERMS, least, new Uint8Array(n), 1);
  fit.derivatives.set(rows);
  const veil = new Float64Array(TERMS);
  const leave = () => {
    for (let i = 0; i < n; i++) {
      const p = ring[i] as number;
      let value = (frame.data[p] as number) - gain * (level[p] as number);
      for (let j = 0; j < TERMS; j++) {
        value -= (veil[j] as number) * (rows[i * TERMS + j] as number);
      }
      fit.residual[i] = value;
    }
  };
  for (let round = 0; round < ROUNDS; round++) {
    leave();
    const step = fit.step();
    if (step === null) return background;
    for (let j = 0; j < TERMS; j++) veil[j] = (veil[j] as number) + (step[j] as number);
  }
  leave();
  const deviation = fit.deviation();
  const agreeing = new Float64Array(EIGHTHS);
  const all = new Float64Array(EIGHTHS);
  let squares = 0;
  for (let i = 0; i < n; i++) {
    const eighth = eighths[i] as number;
    const p = ring[i] as number;
    const left = fit.residual[i] as number;
    const put = (frame.data[p] as number) - gain * (level[p] as number) - left;
    squares += (put * put) / n;
    all[eighth] = (all[eighth] as number) + 1;
    if (Math.abs(left) < AGREES * deviation) agreeing[eighth] = (agreeing[eighth] as number) + 1;
  }
  const told = squares > (TIMES_NOISE * deviation) ** 2 * (TERMS / n);
  if (!told || all.some((of, k) => (agreeing[k] as number) < AGREEING * of)) return background;
  const seen = level.slice();
  const [mx, my] = middle;
  const [a, b, c, d] = shape;
  for (const p of within) {
    const x = p % frame.width;
    const y = (p - x) / frame.width;
    harmonics((a * (x - mx) + b * (y - my)) / unit, (c * (x - mx) + d * (y - my)) / unit, terms);
    let value = 0;
    for (let j = 0; j < TERMS; j++) value += (veil[j] as number) * (terms[j] as number);
    seen[p] = (level[p] as number) + value / gain;
  }
  return { ...background, level: seen };
}

function harmonics(x: number, y: number, out: Float64Array): void {
  out[0] = 1;
  out[1] = x;
  out[2] = y;
  out[3] = x * x - y * y;
  out[4] = 2 * x * y;
  out[5] = x * (x * x - 3 * y * y);
  out[6] = y * (3 * x * x - y * y);
}
