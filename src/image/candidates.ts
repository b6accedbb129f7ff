import type { GreyFrame } from '../core/frame';
import { frameGain } from './gain';
import type { Plane, Vision } from './opencv';
import type { Background, BallModel, Candidate } from './types';

/** Radius of the disc in the reduced picture: large enough for its shape, small enough for speed. */
const COARSE_RADIUS = 6;
/** Correlation below which nothing round is there; half a disc gives about 0.6. */
const LEAST_SCORE = 0.42;
const MOST_CANDIDATES = 6;
/** Change, in standard deviations of the reduced picture's noise, from which a pixel counts in full. */
const FULL_CHANGE = 8;
const NO_CHANGE = 3;
/** Compression leaves changes of about this many grey values of 255 that the noise does not tell of. */
const LEAST_CHANGE = 4 / 255;

/**
 * Coarse places where the frame differs from the background in a patch like the ball's disc, drawn
 * out by its blur; darker or lighter alike. Best first; none where nothing is like it. Good to about
 * a quarter of the radius, and drawn towards the visible part of a ball that is partly hidden.
 */
export function findCandidates(
  frame: GreyFrame,
  background: Background,
  ball: BallModel,
  vision: Vision,
): Candidate[] {
  const factor = Math.max(1, Math.round(ball.radius / COARSE_RADIUS));
  const radius = ball.radius / factor;
  const blur = [ball.blur[0] / factor, ball.blur[1] / factor] as const;
  const template = discTemplate(radius, blur);
  // Room for a ball cut by the border: the picture goes on, unchanged, by a disc's half size.
  const padX = (template.width - 1) / 2;
  const padY = (template.height - 1) / 2;
  const change = changeMap(frame, background, ball, factor, padX, padY);
  if (change === null) return [];
  const { plane, left, top } = change;
  if (template.width > plane.width || template.height > plane.height) return [];
  const scores = vision.correlate(plane, template);
  // What a place scores at its centre pixel is at the same index, the pad shifted by the half template.
  const found: Candidate[] = [];
  for (const peak of peaks(scores, radius)) {
    const visible = discFill(plane, peak.x + padX, peak.y + padY, radius);
    if (visible < 0.2) continue;
    found.push({
      x: left + (peak.x + 0.5) * factor - 0.5,
      y: top + (peak.y + 0.5) * factor - 0.5,
      score: Math.min(1, peak.score),
      visible,
    });
    if (found.length === MOST_CANDIDATES) break;
  }
  return found;
}

/** Share of change (0..1) of each block of `factor` x `factor` pixels of the region, with an empty margin. */
function changeMap(
  frame: GreyFrame,
  background: Background,
  ball: BallModel,
  factor: number,
  padX: number,
  padY: number,
): { plane: Plane; left: number; top: number } | null {
  const { data, width } = frame;
  const { level, noise, white } = background;
  const left = Math.max(0, Math.floor(ball.region[0]));
  const top = Math.max(0, Math.floor(ball.region[1]));
  const right = Math.min(frame.width, Math.ceil(ball.region[0] + ball.region[2]));
  const bottom = Math.min(frame.height, Math.ceil(ball.region[1] + ball.region[3]));
  const columns = Math.floor((right - left) / factor);
  const rows = Math.floor((bottom - top) / factor);
  if (columns < 1 || rows < 1) return null;
  const gain = frameGain(frame, background);
  const planeWidth = columns + 2 * padX;
  const planeHeight = rows + 2 * padY;
  const plane = new Float32Array(planeWidth * planeHeight);
  const area = factor * factor;
  const floor = LEAST_CHANGE * white;
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      let difference = 0;
      let base = 0;
      for (let dy = 0; dy < factor; dy++) {
        let p = (top + row * factor + dy) * width + left + column * factor;
        for (let dx = 0; dx < factor; dx++, p++) {
          const b = level[p] as number;
          difference += (data[p] as number) - gain * b;
          base += b;
        }
      }
      const sigma = Math.sqrt(
        Math.max(1e-12, noise.readVariance + (noise.gain * base) / area) / area,
      );
      const none = Math.max(NO_CHANGE * sigma, floor);
      const full = Math.max(FULL_CHANGE * sigma, 2.5 * floor);
      const share = (Math.abs(difference) / area - none) / (full - none);
      plane[(row + padY) * planeWidth + column + padX] = Math.min(1, Math.max(0, share));
    }
  }
  return { plane: { data: plane, width: planeWidth, height: planeHeight }, left, top };
}

/** The disc swept along the blur, area-weighted at its rim, in a margin of one third of its radius. */
function discTemplate(radius: number, blur: readonly [number, number]): Plane {
  const halfX = Math.ceil(radius * 1.35 + Math.abs(blur[0]) / 2);
  const halfY = Math.ceil(radius * 1.35 + Math.abs(blur[1]) / 2);
  const width = 2 * halfX + 1;
  const height = 2 * halfY + 1;
  const data = new Float32Array(width * height);
  const steps = Math.max(1, Math.ceil(Math.hypot(blur[0], blur[1])));
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      let cover = 0;
      for (let k = 0; k < steps; k++) {
        const t = (k + 0.5) / steps - 0.5;
        const d = Math.hypot(x - halfX - t * blur[0], y - halfY - t * blur[1]);
        cover += Math.min(1, Math.max(0, radius - d + 0.5));
      }
      // The change is clipped long before half cover, so it looks the full swept shape.
      data[y * width + x] = Math.min(1, (2 * cover) / steps);
    }
  }
  return { data, width, height };
}

interface Peak {
  readonly x: number;
  readonly y: number;
  readonly score: number;
}

/** Local maxima above the least score, strongest first, none within a radius of a stronger one. */
function peaks(scores: Plane, radius: number): Peak[] {
  const { data, width, height } = scores;
  const all: Peak[] = [];
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const value = data[y * width + x] as number;
      if (value < LEAST_SCORE) continue;
      const at = (dx: number, dy: number) =>
        x + dx < 0 || y + dy < 0 || x + dx >= width || y + dy >= height
          ? -1
          : (data[(y + dy) * width + x + dx] as number);
      // `>=` one way and `>` the other lets one pixel of a plateau through.
      if (
        value >= at(-1, 0) &&
        value > at(1, 0) &&
        value >= at(0, -1) &&
        value > at(0, 1) &&
        value >= at(-1, -1) &&
        value > at(1, 1) &&
        value >= at(1, -1) &&
        value > at(-1, 1)
      ) {
        all.push({
          x: x + parabola(at(-1, 0), value, at(1, 0)),
          y: y + parabola(at(0, -1), value, at(0, 1)),
          score: value,
        });
      }
    }
  }
  all.sort((a, b) => b.score - a.score);
  const kept: Peak[] = [];
  for (const peak of all) {
    if (kept.every((other) => Math.hypot(other.x - peak.x, other.y - peak.y) > radius)) {
      kept.push(peak);
    }
  }
  return kept;
}

/** Offset of the vertex of the parabola through three samples one apart, -0.5..0.5. */
function parabola(before: number, at: number, after: number): number {
  const curvature = before - 2 * at + after;
  if (curvature >= 0) return 0;
  return Math.min(0.5, Math.max(-0.5, (before - after) / (2 * curvature)));
}

/** Mean change within the disc: the share of it that shows. */
function discFill(plane: Plane, x: number, y: number, radius: number): number {
  let sum = 0;
  let n = 0;
  const reach = Math.ceil(radius);
  const cx = Math.round(x);
  const cy = Math.round(y);
  for (let dy = -reach; dy <= reach; dy++) {
    for (let dx = -reach; dx <= reach; dx++) {
      if (Math.hypot(cx + dx - x, cy + dy - y) > radius) continue;
      const px = cx + dx;
      const py = cy + dy;
      n++;
      if (px >= 0 && py >= 0 && px < plane.width && py < plane.height) {
        sum += plane.data[py * plane.width + px] as number;
      }
    }
  }
  return n > 0 ? sum / n : 0;
}
