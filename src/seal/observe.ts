import type { GreyFrame } from '../core/frame';
import { ExitframeError } from '../core/reason';
import type { Pixels } from '../core/units';
import type { Background } from '../image/types';
import { capRoughness } from './cap';
import { pictureOf, ROOT, type Straightened, straighten } from './straighten';
import type { FindComponents, SealObservation, SealView } from './types';

/** Gaps in a line of film no longer than this are bridged, px: a bright speck, a mark on the background. */
const BRIDGE: Pixels = 3;
/** Patches smaller than this share of the half aperture squared are no piece of film. */
const PIECE = 0.003;
const SMALLEST_PIECE = 6;
/** Ends of the outline left out of the smooth-cap test: the film meets the ring there at a corner. */
const OUTLINE_ENDS = 0.12;
/** The front is the mean over this share of the half aperture, where that is farthest out. */
const FRONT_BAND = 0.12;
/** Standard uncertainty of the front where no change is seen, and the least it can have, px. */
const UNSEEN_U: Pixels = 0.3;
const LEAST_U: Pixels = 0.05;

/**
 * What one frame shows of the seal: outline of the film along lines parallel to the axis, pieces, gaps.
 * @throws ExitframeError `sealFrameSize` where frame and background differ in size.
 */
export function observeSeal(
  frame: GreyFrame,
  background: Background,
  view: SealView,
  findComponents: FindComponents,
): SealObservation {
  if (frame.width !== background.width || frame.height !== background.height) {
    throw new ExitframeError(
      'sealFrameSize',
      `Frame ${frame.index} is ${frame.width} x ${frame.height}, the background ${background.width} x ${background.height}.`,
      'Build the background from the same footage.',
    );
  }
  const film = straighten(frame, background, view);
  const { columns, rows, mask, zero } = film;
  const root = zero + Math.ceil(ROOT * view.halfAperture);
  const joined = new Float64Array(rows);
  const slopes = new Float64Array(rows);
  const outermost = new Float64Array(rows);
  let changedArea = 0;
  let enclosed = 0;
  let gaps = 0;
  for (let row = 0; row < rows; row++) {
    const start = row * columns;
    let last = -1;
    let area = 0;
    let first = root;
    for (let column = zero; column < columns; column++) {
      if (mask[start + column] === 1) {
        if (area === 0) first = Math.min(first, column);
        last = column;
        area++;
      }
    }
    changedArea += area;
    if (last < 0) continue;
    outermost[row] = last - zero + 0.5;
    const span = last - first + 1;
    if (span > 0) {
      enclosed += span;
      gaps += span - area;
    }
    const edge = joinedEdge(film, row, root);
    if (edge === null) continue;
    joined[row] = Math.max(0, edge.at);
    slopes[row] = edge.slope;
  }
  const { front, frontU } = frontOf(joined, slopes, film.noise, view.halfAperture);
  const smallest = Math.max(SMALLEST_PIECE, PIECE * view.halfAperture * view.halfAperture);
  const pieces = findComponents(mask, columns, rows).filter((c) => c.area >= smallest).length;
  return {
    frame: frame.index,
    front,
    frontU,
    reach: outermost.reduce((a, b) => Math.max(a, b), 0),
    roughness: roughnessOf(joined, outermost),
    opening: enclosed === 0 ? 0 : gaps / enclosed,
    pieces,
    changedArea,
    picture: pictureOf(film, view, background.white),
  };
}

/**
 * Outer edge of the film joined to the plane on one line, where the change falls to half its strength just
 * inside (linear between pixels), and the slope there in grey values a pixel.
 */
function joinedEdge(
  film: Straightened,
  row: number,
  root: number,
): { at: Pixels; slope: number } | null {
  const { columns, mask, change, zero } = film;
  const start = row * columns;
  let begin = -1;
  for (let column = 0; column < Math.min(root + 1, columns); column++) {
    if (mask[start + column] === 1) {
      begin = column;
      break;
    }
  }
  if (begin < 0) return null;
  let last = begin;
  for (let column = begin; column < columns && column - last <= BRIDGE + 1; column++) {
    if (mask[start + column] === 1) last = column;
  }
  const inner = Math.max(begin, last - 4);
  let strength = 0;
  for (let column = inner; column <= last; column++) {
    const c = change[start + column] as number;
    if (Math.abs(c) > Math.abs(strength)) strength = c;
  }
  const sign = Math.sign(strength);
  const level = Math.abs(strength) / 2;
  for (let column = Math.min(last + 1, columns - 1); column > inner; column--) {
    const outer = sign * (change[start + column] as number);
    const inside = sign * (change[start + column - 1] as number);
    if (inside >= level && outer < level) {
      const slope = inside - outer;
      return { at: column - 1 + (inside - level) / slope - zero, slope };
    }
  }
  return { at: last + 0.5 - zero, slope: Math.max(level, 1e-6) };
}

/** Farthest the film's edge reaches as the mean over a narrow band, with what noise and pixels leave open. */
function frontOf(
  joined: Float64Array,
  slopes: Float64Array,
  noise: number,
  halfAperture: Pixels,
): { front: Pixels; frontU: Pixels } {
  const band = Math.min(joined.length, 2 * Math.max(1, Math.round(FRONT_BAND * halfAperture)) + 1);
  let sum = 0;
  let front = 0;
  let best = -1;
  for (let row = 0; row < joined.length; row++) {
    sum += joined[row] as number;
    if (row >= band) sum -= joined[row - band] as number;
    if (row >= band - 1 && sum / band > front) {
      front = sum / band;
      best = row - band + 1;
    }
  }
  if (best < 0) return { front: 0, frontU: UNSEEN_U };
  let variance = 0;
  for (let row = best; row < best + band; row++) {
    const slope = slopes[row] as number;
    variance += slope > 0 ? (noise / slope) ** 2 : UNSEEN_U * UNSEEN_U;
  }
  return { front, frontU: Math.hypot(Math.sqrt(variance) / band, LEAST_U) };
}

/** Departure from a smooth cap of the outline: film joined to the plane, or what came off in front of it. */
function roughnessOf(joined: Float64Array, outermost: Float64Array): Pixels {
  let from = outermost.findIndex((a) => a > 0);
  let to = outermost.findLastIndex((a) => a > 0);
  const ends = Math.round(OUTLINE_ENDS * (to - from));
  from += ends;
  to -= ends;
  if (from < 0 || to <= from) return 0;
  const outline = new Float64Array(to - from + 1);
  for (let i = 0; i < outline.length; i++) {
    const edge = joined[from + i] as number;
    const any = outermost[from + i] as number;
    // Where both are the same edge, the sub-pixel one counts.
    outline[i] = Math.abs(edge - any) < 1.5 ? edge : any;
  }
  return capRoughness(outline);
}
