import type { GreyFrame } from '../../core/frame';
import { ExitframeError } from '../../core/reason';
import type { ImagePoint, Pixels } from '../../core/units';
import { type Blurred, gaussian, sample } from '../soften';

/**
 * A place where four fields of a chessboard meet. Going round it with the angle growing (from x towards y), the
 * grey rises across the line at `rising` and falls across the line at `falling`; both modulo half a turn.
 */
export interface Saddle {
  readonly at: ImagePoint;
  readonly rising: number;
  readonly falling: number;
  /** Bright minus dark fields, grey values. */
  readonly contrast: number;
}

/** Softening before second derivatives are taken, px. */
const SIGMA = 1.7;
/** A maximum of the saddle measure is the largest this far around, px. */
const ALONE: Pixels = 4;
/** Least saddle measure as a share of the strongest places'. */
const LEAST_SHARE = 0.02;
const MOST = 3000;
/** Ring on which the fields around a place are looked at. */
const RING_RADIUS: Pixels = 5;
const RING = 48;
/** Least contrast of the fields, share of the grey range, and least likeness of opposite sides of the ring. */
const LEAST_CONTRAST = 0.03;
const LEAST_LIKENESS = 0.5;
/** The two lines meet at no smaller angle than this: 20 degrees. */
const LEAST_ANGLE = (20 * Math.PI) / 180;

/** Saddle points of a picture with two fields of each kind around them, strongest first, to about half a pixel. */
export function findSaddles(frame: GreyFrame): Saddle[] {
  if (frame.data.length !== frame.width * frame.height) {
    throw new ExitframeError('sizeMismatch', 'A frame came with another number of pixels.');
  }
  const soft = gaussian(frame, SIGMA);
  const measure = saddleMeasure(soft);
  const fine = gaussian(frame, 0.8);
  return maxima(measure, soft).flatMap(({ x, y }) => fieldsAround(fine, frame.white, [x, y]));
}

/** Minus the determinant of the second derivatives: large where the grey goes up one way and down the other. */
function saddleMeasure({ data, width, height }: Blurred): Float32Array {
  const out = new Float32Array(width * height);
  for (let y = 1; y < height - 1; y++) {
    for (let x = 1; x < width - 1; x++) {
      const p = y * width + x;
      const centre = data[p] as number;
      const xx = (data[p - 1] as number) + (data[p + 1] as number) - 2 * centre;
      const yy = (data[p - width] as number) + (data[p + width] as number) - 2 * centre;
      const xy =
        ((data[p + width + 1] as number) +
          (data[p - width - 1] as number) -
          (data[p + width - 1] as number) -
          (data[p - width + 1] as number)) /
        4;
      const value = xy * xy - xx * yy;
      if (value > 0) out[p] = value;
    }
  }
  return out;
}

function maxima(measure: Float32Array, { width, height }: Blurred): { x: number; y: number }[] {
  const found: { x: number; y: number; value: number }[] = [];
  const margin = RING_RADIUS + 2;
  for (let y = margin; y < height - margin; y++) {
    for (let x = margin; x < width - margin; x++) {
      const value = measure[y * width + x] as number;
      if (value > 0 && isLargest(measure, width, x, y, value)) found.push({ x, y, value });
    }
  }
  found.sort((a, b) => b.value - a.value);
  // The strongest few may be glints: the level is taken a little below the top.
  const strong = found[Math.min(found.length - 1, 20)]?.value ?? 0;
  return found.filter(({ value }) => value > LEAST_SHARE * strong).slice(0, MOST);
}

function isLargest(
  measure: Float32Array,
  width: number,
  x: number,
  y: number,
  value: number,
): boolean {
  for (let dy = -ALONE; dy <= ALONE; dy++) {
    for (let dx = -ALONE; dx <= ALONE; dx++) {
      const other = measure[(y + dy) * width + x + dx] as number;
      if (other > value || (other === value && (dy < 0 || (dy === 0 && dx < 0)))) return false;
    }
  }
  return true;
}

/** The place with its lines where the ring around it shows two bright and two dark fields opposite each other. */
function fieldsAround(picture: Blurred, white: number, at: ImagePoint): Saddle[] {
  const ring = new Float64Array(RING);
  for (let k = 0; k < RING; k++) {
    const angle = (2 * Math.PI * k) / RING;
    ring[k] = sample(
      picture,
      at[0] + RING_RADIUS * Math.cos(angle),
      at[1] + RING_RADIUS * Math.sin(angle),
    );
  }
  const level = middleLevel(ring);
  const rising: number[] = [];
  const falling: number[] = [];
  for (let k = 0; k < RING; k++) {
    const here = (ring[k] as number) - level;
    const next = (ring[(k + 1) % RING] as number) - level;
    if (here < 0 === next < 0) continue;
    const angle = (2 * Math.PI * (k + here / (here - next))) / RING;
    (here < 0 ? rising : falling).push(angle);
  }
  if (rising.length !== 2 || falling.length !== 2) return [];
  const up = lineThrough(rising as [number, number]);
  const down = lineThrough(falling as [number, number]);
  if (up === null || down === null || betweenLines(up, down) < LEAST_ANGLE) return [];
  let bright = 0;
  let dark = 0;
  let brightCount = 0;
  let product = 0;
  let squares = 0;
  for (let k = 0; k < RING; k++) {
    const value = (ring[k] as number) - level;
    if (value > 0) {
      bright += value;
      brightCount++;
    } else dark += value;
    product += value * ((ring[(k + RING / 2) % RING] as number) - level);
    squares += value * value;
  }
  const contrast = bright / brightCount - dark / (RING - brightCount);
  if (contrast < LEAST_CONTRAST * white || product < LEAST_LIKENESS * squares) return [];
  return [{ at, rising: up, falling: down, contrast }];
}

/** Halfway between the darkest and the brightest quarter. */
function middleLevel(ring: Float64Array): number {
  const sorted = ring.slice().sort();
  const quarter = RING >> 2;
  let low = 0;
  let high = 0;
  for (let k = 0; k < quarter; k++) {
    low += sorted[k] as number;
    high += sorted[RING - 1 - k] as number;
  }
  return (low + high) / (2 * quarter);
}

/** Two directions about half a turn apart as one line; null where they are no such pair (30 degrees). */
function lineThrough([a, b]: readonly [number, number]): number | null {
  const off = turn(b - Math.PI - a);
  return Math.abs(off) < Math.PI / 6 ? a + off / 2 : null;
}

/** An angle brought to -pi .. pi. */
export const turn = (angle: number): number => Math.atan2(Math.sin(angle), Math.cos(angle));

/** Angle between two lines, 0 .. pi/2. */
export function betweenLines(a: number, b: number): number {
  const off = Math.abs(turn(2 * (a - b))) / 2;
  return off;
}
