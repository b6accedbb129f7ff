import type { GreyFrame } from '../core/frame';
import { median, robustDeviation } from '../core/statistics';
import type { Shape } from './ballShape';
import type { Disc } from './discModel';
import { freeShading, placesFor } from './discShade';
import { sureOnes } from './sure';
import type { Background, BallModel, CentreMeasurement } from './types';

/** Frames that show nearly as much of the outline as the best do tell of the brightness, if there are as many. */
const WELL_SEEN_SHARE = 0.92;
const FEWEST_FRAMES = 4;
/**
 * Means of nine pixels this far off what ball or background would show are something else: share of the
 * contrast, standard deviations of the mean, and of the ball's brightness from frame to frame.
 */
const UNLIKE_SHARE = 0.18;
const UNLIKE_SIGMAS = 5;
const UNLIKE_SPREADS = 3;
/** How far, in standard deviations of the edge's blur, what hides something is spread over it. */
const COVER_SIGMAS = 2.5;
/** Where the limb's brightness is taken, share of the radius. */
const LIMB = 0.97;
/** Ring outside the soft edge that has to be background, px. */
const RING = 3;

/** Adds the brightness that the frames agree on which show the ball well; as it is where fewer than four do. */
export function learnBrightness(
  ball: BallModel,
  measured: readonly CentreMeasurement[],
): BallModel {
  const sure = sureOnes(measured);
  const best = Math.max(0, ...sure.map(({ visible }) => visible));
  const values = sure.flatMap(({ visible, brightness }) =>
    visible >= WELL_SEEN_SHARE * best && brightness !== undefined ? [brightness] : [],
  );
  if (values.length < FEWEST_FRAMES) return ball;
  const value = median(values);
  return { ...ball, brightness: { value, u: robustDeviation(values, value) } };
}

/** Brightness of the ball by the normal's u and v, in the background's light; null where it is not known yet. */
export function learntBrightness({
  look,
  brightness,
}: BallModel): ((u: number, v: number) => number) | null {
  if (look === undefined || brightness === undefined) return null;
  const shading = freeShading();
  const shade = Float64Array.from(look.shade);
  const by = new Float64Array(shading.terms);
  const place = placesFor(1);
  return (u, v) => {
    place.u[0] = u;
    place.v[0] = v;
    place.w[0] = Math.sqrt(Math.max(0, 1 - u * u - v * v));
    shading.over(place, 1, shade, by, 0);
    return brightness.value * (place.bright[0] as number);
  };
}

/** Flags on a box of pixels: 1 where something else stands before the ball or beside it, its blurred border included. */
interface HiddenPixels {
  at(x: number, y: number): boolean;
}

const NOTHING_HIDDEN: HiddenPixels = { at: () => false };

/**
 * Pixels around a disc that show neither the ball, as bright as in the other frames, nor the background nor
 * what lies between the two on the soft edge, which reaches `band` to each side. None while the ball's look
 * is not known.
 */
export function hiddenPixels(
  frame: GreyFrame,
  { level, noise, faulty }: Background,
  gain: number,
  disc: Pick<Disc, 'x' | 'y' | 'sigma'>,
  ball: BallModel,
  [a, b, c, d]: Shape,
  band: number,
): HiddenPixels {
  const { radius, blur, brightness } = ball;
  const learnt = learntBrightness(ball);
  if (brightness === undefined || learnt === null) return NOTHING_HIDDEN;
  const border = Math.ceil(COVER_SIGMAS * disc.sigma);
  const halfX = Math.ceil(1.08 * radius + Math.abs(blur[0]) / 2 + band) + RING;
  const halfY = Math.ceil(1.08 * radius + Math.abs(blur[1]) / 2 + band) + RING;
  const x0 = Math.max(0, Math.floor(disc.x) - halfX);
  const y0 = Math.max(0, Math.floor(disc.y) - halfY);
  const columns = Math.max(0, Math.min(frame.width - 1, Math.ceil(disc.x) + halfX) - x0 + 1);
  const rows = Math.max(0, Math.min(frame.height - 1, Math.ceil(disc.y) + halfY) - y0 + 1);
  const off = new Float64Array(columns * rows);
  const cut = new Float64Array(columns * rows);
  const told = new Uint8Array(columns * rows);
  const scale = gain * brightness.value;
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const p = (y0 + row) * frame.width + x0 + column;
      if (faulty !== undefined && faulty[p] === 1) continue;
      const ox = x0 + column - disc.x;
      const oy = y0 + row - disc.y;
      const qx = a * ox + b * oy;
      const qy = c * ox + d * oy;
      const r = Math.sqrt(qx * qx + qy * qy);
      const spread = r > 0 ? Math.abs(qx * blur[0] + qy * blur[1]) / (2 * r) : 0;
      const beyond = r - radius - spread;
      if (beyond > band + RING) continue;
      const behind = gain * (level[p] as number);
      // Of the soft edge the ball's part is as bright as its limb.
      const over = 1 / Math.max(radius, r / LIMB);
      const shown = gain * learnt(qx * over, qy * over);
      const value = frame.data[p] as number;
      const q = row * columns + column;
      let high = behind;
      let low = behind;
      if (beyond < band) {
        // Inside it is ball, on the edge anything between the two.
        const inside = r - radius + spread < -band;
        high = inside ? shown : Math.max(shown, behind);
        low = inside ? shown : Math.min(shown, behind);
      }
      off[q] = value - Math.max(low, Math.min(high, value));
      told[q] = 1;
      const sigma = Math.sqrt(noise.readVariance + noise.gain * Math.max(shown, behind)) / 3;
      cut[q] = Math.max(
        UNLIKE_SHARE * Math.abs(scale - behind),
        UNLIKE_SIGMAS * sigma,
        UNLIKE_SPREADS * gain * brightness.u,
      );
    }
  }
  const flags = new Uint8Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      let sum = 0;
      let n = 0;
      for (let y = Math.max(0, row - 1); y <= Math.min(rows - 1, row + 1); y++) {
        for (let x = Math.max(0, column - 1); x <= Math.min(columns - 1, column + 1); x++) {
          const q = y * columns + x;
          if (told[q] === 0) continue;
          sum += off[q] as number;
          n++;
        }
      }
      const q = row * columns + column;
      if (told[q] === 0 || Math.abs(sum) < n * (cut[q] as number)) continue;
      for (let y = Math.max(0, row - border); y <= Math.min(rows - 1, row + border); y++) {
        const to = Math.min(columns - 1, column + border);
        for (let x = Math.max(0, column - border); x <= to; x++) flags[y * columns + x] = 1;
      }
    }
  }
  return { at: (x, y) => flags[(y - y0) * columns + x - x0] === 1 };
}
