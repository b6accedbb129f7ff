import type { GreyFrame } from '../core/frame';
import { type ChangeMap, changeMap } from './change';
import type { Plane } from './opencv/pictures';
import type { Vision } from './opencv/vision';
import { followRim } from './rim';
import type { Background, BallModel, Candidate, Rim } from './types';

/** Radius of the disc in the reduced picture: large enough for its shape, small enough for speed. */
const COARSE_RADIUS = 6;
/** Correlation below which nothing round is there; half a disc gives about 0.6. */
const LEAST_SCORE = 0.42;
const MOST_CANDIDATES = 8;
/** More changed blocks than this many discs hold: the ball may be part of a larger change. */
const MORE_THAN_BALL = 1.5;
/** Share of the disc that must show. */
const LEAST_FILL = 0.2;
/** Share of the rim that must lie on a circle for the circle's middle to be the better place. */
const ROUND_ENOUGH = 0.4;

/**
 * Coarse places where the frame differs from the background in a patch like the ball's disc, drawn
 * out by its blur; darker or lighter alike. Best first; none where nothing is like it. Good to about
 * a quarter of the radius, to a tenth where most of the rim shows; else drawn towards the visible part.
 * `gain`: the frame's light over the background's.
 */
export function findCandidates(
  frame: GreyFrame,
  background: Background,
  gain: number,
  ball: BallModel,
  vision: Vision,
): Candidate[] {
  const block = Math.max(1, Math.round(ball.radius / COARSE_RADIUS));
  const radius = ball.radius / block;
  const template = discTemplate(radius, [ball.blur[0] / block, ball.blur[1] / block]);
  // Room for a ball cut by the border: the picture goes on, unchanged, by a disc's half size.
  const marginX = (template.width - 1) / 2;
  const marginY = (template.height - 1) / 2;
  const change = changeMap(frame, background, ball, gain, block, marginX, marginY);
  if (change === null) return [];
  const found: Candidate[] = [];
  // What a place scores at its centre block is at the same index, the margin shifted by the half template.
  const all = scoresOf(change, template, radius, vision)
    .flatMap((scores) => peaks(scores, radius))
    .map(({ x, y, score }) => ({
      x: change.left + (x + marginX) * block,
      y: change.top + (y + marginY) * block,
      score: Math.min(1, score),
      visible: discFill(change.changed, x + marginX, y + marginY, radius),
    }));
  all.sort((a, b) => b.score - a.score);
  for (const rough of all) {
    if (found.length === MOST_CANDIDATES) break;
    if (rough.visible < LEAST_FILL) continue;
    const rim = followRim(frame, background, gain, [rough.x, rough.y], ball.radius);
    const place = rim !== null && rim.round >= ROUND_ENOUGH ? rim : rough;
    const known = ({ x, y }: Candidate) => Math.hypot(x - place.x, y - place.y) < ball.radius / 2;
    if (found.some(known)) continue;
    found.push({
      x: place.x,
      y: place.y,
      score: rough.score,
      visible: rough.visible,
      ...(rim === null ? {} : { rim: rimOf(rim) }),
    });
  }
  return found;
}

const rimOf = ({ size, round, sharp, contrast }: Rim): Rim => ({
  size,
  round,
  sharp,
  contrast,
});

/**
 * Likeness to the disc of what has changed, whichever way; and, where that is more than a ball, of what is brighter
 * and of what is darker than around it: a ball in mist or against its shadow.
 */
function scoresOf(
  { changed, difference }: ChangeMap,
  template: Plane,
  radius: number,
  vision: Vision,
): Plane[] {
  const whole = vision.correlate(changed, template);
  let blocks = 0;
  for (const share of changed.data) blocks += share;
  if (blocks < MORE_THAN_BALL * Math.PI * radius * radius) return [whole];
  const brighter = vision.correlate(difference, template);
  return [whole, brighter, { ...brighter, data: brighter.data.map((score) => -score) }];
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
