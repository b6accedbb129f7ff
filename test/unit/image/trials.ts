import type { GreyFrame } from '../../../src/core/frame';
import type { Reason } from '../../../src/core/reason';
import type { ImagePoint } from '../../../src/core/units';
import { measureCentre } from '../../../src/image/centre';
import type { Background, BallModel, CentreMeasurement } from '../../../src/image/types';
import { type BallScene, expose, generator, render } from './rendering';

/** A kind of picture, of which many are drawn: place, noise, start and expected radius differ each time. */
export interface Kind {
  readonly radius: number;
  readonly noise: number;
  readonly scene?: Partial<BallScene>;
  /** Where a wall hides the ball's left: its edge from the ball's centre, in radii. */
  readonly wallAt?: number;
  /** A fragment of this size across the outline, somewhere. */
  readonly fragment?: readonly [number, number];
  readonly ball?: Partial<BallModel>;
  /** Relative standard deviation of the radius the measurement is told. */
  readonly radiusSpread?: number;
}

export interface Trials {
  readonly measured: readonly CentreMeasurement[];
  readonly refused: readonly Reason[];
  readonly bias: readonly [number, number];
  /** Root mean square error of x and y, px. */
  readonly rms: readonly [number, number];
  /** Root mean square of error over its stated standard uncertainty. */
  readonly normalised: number;
}

/** The matt ball of most tests: light from above left, no side in full shadow. */
export const lamp =
  (bright: number) =>
  (u: number, v: number): number => {
    const w = Math.sqrt(Math.max(0, 1 - u * u - v * v));
    return bright * (0.5 + 0.5 * Math.max(0, -0.3 * u - 0.5 * v + 0.81 * w));
  };

/** A picture of a kind, with what its measurement is told and the truth, which is the renderer's own. */
export interface Picture {
  readonly frame: GreyFrame;
  readonly background: Background;
  readonly centre: ImagePoint;
  readonly start: ImagePoint;
  readonly ball: BallModel;
}

/** Draws `count` pictures of a kind. */
export function draw(kind: Kind, count: number, seed: number): Picture[] {
  const random = generator(seed);
  const { radius, noise } = kind;
  const blur = kind.scene?.blur ?? [0, 0];
  const width = Math.ceil(3.4 * radius + 18 + Math.abs(blur[0]));
  const height = Math.ceil(3 * radius + 14 + Math.abs(blur[1]));
  const behind = kind.scene?.background ?? (() => 60);
  const background: Background = {
    width,
    height,
    white: 255,
    noise: { readVariance: noise * noise + 1 / 12, gain: 0 },
    level: Float32Array.from({ length: width * height }, (_, p) =>
      behind(p % width, Math.floor(p / width)),
    ),
  };
  // A half-hidden ball is sighted towards its visible side.
  const pull = kind.wallAt === undefined ? 0 : 0.25 * radius;
  return Array.from({ length: count }, (_, i): Picture => {
    const cx = width / 2 + random.uniform() - 0.5;
    const cy = height / 2 + random.uniform() - 0.5;
    const turn = 2 * Math.PI * random.uniform();
    const scene: BallScene = {
      width,
      height,
      centre: [cx, cy],
      radius,
      ...kind.scene,
      ...wallOf(kind, cx),
      ...fragmentOf(kind, cx + 0.95 * radius * Math.cos(turn), cy + 0.95 * radius * Math.sin(turn)),
    };
    return {
      frame: expose(render(scene), width, height, noise, random, i),
      background,
      centre: [cx, cy],
      start: [
        cx + pull + 0.25 * radius * (random.uniform() - 0.5),
        cy + 0.25 * radius * (random.uniform() - 0.5),
      ],
      ball: {
        radius: radius * (1 + (kind.radiusSpread ?? 0.01) * random.normal()),
        blur,
        region: [0, 0, width, height],
        ...kind.ball,
      },
    };
  });
}

/** Measures pictures, each with what it is told of the ball, `ball` taken over where given. */
export function measure(pictures: readonly Picture[], ball: Partial<BallModel> = {}): Trials {
  const measured: CentreMeasurement[] = [];
  const refused: Reason[] = [];
  const errors: [number, number][] = [];
  let normalised = 0;
  for (const { frame, background, centre, start, ball: told } of pictures) {
    const found = measureCentre(frame, background, start, { ...told, ...ball });
    if (!found.ok) {
      refused.push(found.reason);
      continue;
    }
    const { x, y, varX, varY, covXY } = found.value;
    const dx = x - centre[0];
    const dy = y - centre[1];
    measured.push(found.value);
    errors.push([dx, dy]);
    // Squared Mahalanobis distance over its two degrees of freedom.
    normalised +=
      (dx * dx * varY - 2 * dx * dy * covXY + dy * dy * varX) / (varX * varY - covXY * covXY) / 2;
  }
  const n = Math.max(1, errors.length);
  const mean = (f: (e: readonly [number, number]) => number) =>
    errors.reduce((sum, e) => sum + f(e), 0) / n;
  return {
    measured,
    refused,
    bias: [mean(([x]) => x), mean(([, y]) => y)],
    rms: [Math.sqrt(mean(([x]) => x * x)), Math.sqrt(mean(([, y]) => y * y))],
    normalised: Math.sqrt(normalised / n),
  };
}

/** Draws and measures `count` pictures of a kind. */
export const run = (kind: Kind, count: number, seed: number): Trials =>
  measure(draw(kind, count, seed));

function wallOf({ wallAt, radius }: Kind, cx: number): Pick<BallScene, 'wall'> {
  if (wallAt === undefined) return {};
  const edge = Math.round(cx + wallAt * radius) + 0.3;
  return { wall: (x) => x < edge };
}

function fragmentOf({ fragment }: Kind, fx: number, fy: number): Pick<BallScene, 'fragment'> {
  if (fragment === undefined) return {};
  const [w, h] = fragment;
  return {
    fragment: (x, y) => (Math.abs(x - fx) < w / 2 && Math.abs(y - fy) < h / 2 ? 170 : null),
  };
}
