import type { GreyFrame } from '../core/frame';
import { failure, type Outcome, success } from '../core/reason';
import { median } from '../core/statistics';
import type { ImagePoint, Pixels } from '../core/units';
import { type Blurred, gaussian, sample } from './soften';

/** Softening before the edge is looked for, px. */
const SIGMA = 1.2;
/** The edge may bow by this share of its length to either side of the straight line between its ends, within limits, px. */
const BOW = 0.06;
const BOW_LIMITS = [6, 60] as const;
/** At its ends it lies this near to where they were put, px. */
const ENDS: Pixels = 4;
/** Pixels along the edge averaged for one point. */
const BLOCK = 6;
const SHORTEST: Pixels = 60;
/** The edge's steepness over the usual one beside it. */
const LEAST_PROMINENCE = 3;

/**
 * Sub-pixel points along the edge that runs from about `from` to about `to`, one every six pixels: the steepest
 * place across, followed so that it never jumps. Failures: `edgeTooShort`, `edgeOutside`, `noEdge`.
 */
export function traceEdge(
  frame: GreyFrame,
  from: ImagePoint,
  to: ImagePoint,
): Outcome<readonly ImagePoint[]> {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length < SHORTEST) {
    return failure(
      'edgeTooShort',
      `The edge is marked over ${length.toFixed(0)} px; its bow shows from ${SHORTEST} px on, better across the whole picture.`,
      'Mark its two ends farther apart.',
      { form: 'length', length: length.toFixed(0), shortest: SHORTEST },
    );
  }
  const along: ImagePoint = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const bow = Math.round(Math.min(BOW_LIMITS[1], Math.max(BOW_LIMITS[0], BOW * length)));
  const steepness = steepnessAlong(gaussian(frame, SIGMA), from, along, length, bow);
  if (steepness === null) {
    return failure(
      'edgeOutside',
      'An end of the edge lies outside the frame.',
      'Mark both ends inside the frame.',
    );
  }
  const averaged = averageAlong(steepness);
  const rising = follow(averaged, 1);
  const falling = follow(averaged, -1);
  const [sign, path] = rising.score > falling.score ? [1, rising] : [-1, falling];
  const beside = median(averaged.flatMap((row) => Array.from(row, Math.abs)));
  const typical = median(path.at.map((k, i) => Math.abs(averaged[i]?.[k] as number)));
  if (!(typical > LEAST_PROMINENCE * beside)) {
    return failure(
      'noEdge',
      'No edge stands out between the two ends that were marked.',
      'Mark an edge with a clear step in brightness, such as the outline of the barrel or a ruler.',
    );
  }
  const points: ImagePoint[] = [];
  for (let i = BLOCK >> 1; i < averaged.length - (BLOCK >> 1); i += BLOCK) {
    const off = peakNear(averaged[i] as Float64Array, path.at[i] as number, sign);
    if (off === null) continue;
    const across = off - bow;
    points.push([
      from[0] + i * along[0] - across * along[1],
      from[1] + i * along[1] + across * along[0],
    ]);
  }
  return success(points);
}

/** Slope across the line at every whole pixel along it and to its sides; places beyond the frame have none. */
function steepnessAlong(
  picture: Blurred,
  from: ImagePoint,
  [ax, ay]: ImagePoint,
  length: Pixels,
  bow: number,
): Float64Array[] | null {
  const inside = (x: Pixels, y: Pixels) =>
    x >= 1 && y >= 1 && x < picture.width - 2 && y < picture.height - 2;
  const rows: Float64Array[] = [];
  for (let i = 0; i <= length; i++) {
    const row = new Float64Array(2 * bow + 1);
    for (let k = 0; k < row.length; k++) {
      const across = k - bow;
      const x = from[0] + i * ax - across * ay;
      const y = from[1] + i * ay + across * ax;
      if (inside(x - ay, y + ax) && inside(x + ay, y - ax)) {
        row[k] = (sample(picture, x - ay, y + ax) - sample(picture, x + ay, y - ax)) / 2;
      } else if (k === bow) return null;
    }
    rows.push(row);
  }
  return rows;
}

/** Mean over the block around each place along the edge. */
const averageAlong = (rows: readonly Float64Array[]): Float64Array[] =>
  rows.map((row, i) => {
    const first = Math.max(0, i - (BLOCK >> 1));
    const block = rows.slice(first, i + (BLOCK >> 1) + 1);
    return row.map(
      (_, k) => block.reduce((sum, other) => sum + (other[k] as number), 0) / block.length,
    );
  });

/** The way from end to end of the greatest steepness of one sign, a pixel aside a step at most (dynamic programming). */
function follow(rows: readonly Float64Array[], sign: number): { at: number[]; score: number } {
  const width = rows[0]?.length ?? 0;
  const bow = (width - 1) / 2;
  const nearEnd = (k: number) => Math.abs(k - bow) <= ENDS;
  let best = Float64Array.from({ length: width }, (_, k) =>
    nearEnd(k) ? 0 : Number.NEGATIVE_INFINITY,
  );
  const came: Int8Array[] = [];
  for (const row of rows) {
    const next = new Float64Array(width);
    const step = new Int8Array(width);
    for (let k = 0; k < width; k++) {
      let from = 0;
      for (const d of [-1, 1]) {
        const other = best[k + d] ?? Number.NEGATIVE_INFINITY;
        if (other > (best[k + from] as number)) from = d;
      }
      step[k] = from;
      next[k] = (best[k + from] as number) + Math.max(0, sign * (row[k] as number));
    }
    came.push(step);
    best = next;
  }
  let k = bow;
  for (let other = 0; other < width; other++) {
    if (nearEnd(other) && (best[other] as number) > (best[k] as number)) k = other;
  }
  const score = best[k] as number;
  const at: number[] = [];
  for (let i = rows.length - 1; i >= 0; i--) {
    at[i] = k;
    k += came[i]?.[k] as number;
  }
  return { at, score };
}

/** Summit of the parabola through the steepest place near `k` and its neighbours; null where it has none inside. */
function peakNear(row: Float64Array, k: number, sign: number): number | null {
  let top = k;
  for (let other = Math.max(1, k - 2); other <= Math.min(row.length - 2, k + 2); other++) {
    if (sign * (row[other] as number) > sign * (row[top] as number)) top = other;
  }
  if (top < 1 || top > row.length - 2) return null;
  const [a, b, c] = [row[top - 1], row[top], row[top + 1]].map((v) => sign * (v as number)) as [
    number,
    number,
    number,
  ];
  const curve = a + c - 2 * b;
  return curve < 0 ? top + (a - c) / (2 * curve) : null;
}
