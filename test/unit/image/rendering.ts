import type { GreyFrame } from '../../../src/core/frame';

/** Samples a pixel in each direction. */
const SUB = 8;

export interface BallScene {
  readonly width: number;
  readonly height: number;
  readonly centre: readonly [number, number];
  readonly radius: number;
  /** Displacement over the exposure, px. */
  readonly blur?: readonly [number, number];
  /** Standard deviation of the optics' blur, px. */
  readonly optics?: number;
  /** Brightness over the disc, u and v in -1..1. */
  readonly shade?: (u: number, v: number) => number;
  readonly background?: (x: number, y: number) => number;
  /** What hides the ball: true where it stands before it. Shows the background. */
  readonly wall?: (x: number, y: number) => boolean;
  /** Drawn over everything: its brightness, null where there is none. */
  readonly fragment?: (x: number, y: number) => number | null;
  /** Ball motion while one line is read downwards, px. */
  readonly motionPerLine?: readonly [number, number];
}

/** Exact-as-may-be mean grey value of each pixel, no noise: `SUB` x `SUB` samples, instants 0.3 px apart. */
export function render(scene: BallScene): Float64Array {
  const { width, height, centre, radius } = scene;
  const blur = scene.blur ?? [0, 0];
  const optics = scene.optics ?? 0;
  const shade = scene.shade ?? (() => 180);
  const background = scene.background ?? (() => 60);
  const [mx, my] = scene.motionPerLine ?? [0, 0];
  const swept = Math.hypot(...blur);
  const instants = Math.max(1, Math.ceil(swept / 0.3));
  const reached = (radius + swept / 2 + 0.1) ** 2;
  const columns = width * SUB;
  const rows = height * SUB;
  const fine = new Float64Array(columns * rows);
  for (let r = 0; r < rows; r++) {
    const y = (r + 0.5) / SUB - 0.5;
    for (let c = 0; c < columns; c++) {
      const x = (c + 0.5) / SUB - 0.5;
      const behind = background(x, y);
      let value = behind;
      if (scene.wall?.(x, y) !== true) {
        const cx = centre[0] + mx * (y - centre[1]);
        const cy = centre[1] + my * (y - centre[1]);
        if ((x - cx) ** 2 + (y - cy) ** 2 < reached) {
          let sum = 0;
          for (let k = 0; k < instants; k++) {
            const t = (k + 0.5) / instants - 0.5;
            const u = (x - cx - t * blur[0]) / radius;
            const v = (y - cy - t * blur[1]) / radius;
            sum += u * u + v * v < 1 ? shade(u, v) : behind;
          }
          value = sum / instants;
        }
      }
      fine[r * columns + c] = scene.fragment?.(x, y) ?? value;
    }
  }
  const kernel = pixelKernel(optics * SUB);
  const across = gather(fine, kernel, width, rows, 1, columns, 1, width);
  return gather(across, kernel, height, width, width, 1, width, 1);
}

/** Weights of the samples around a pixel: its own square, drawn out by a Gaussian of `sigma` samples. */
function pixelKernel(sigma: number): { readonly weights: Float64Array; readonly reach: number } {
  const reach = Math.ceil(4 * sigma);
  const weights = new Float64Array(SUB + 2 * reach);
  for (let k = 0; k < weights.length; k++) {
    for (let j = 0; j < SUB; j++) {
      const d = k - reach - j;
      const weight = sigma > 0 ? Math.exp(-0.5 * (d / sigma) ** 2) : Number(d === 0);
      weights[k] = (weights[k] as number) + weight;
    }
  }
  const total = weights.reduce((sum, w) => sum + w, 0);
  return { weights: weights.map((w) => w / total), reach };
}

/** Applies the kernel along one direction, `pixels` results a line; the border sample goes on beyond it. */
function gather(
  from: Float64Array,
  { weights, reach }: { readonly weights: Float64Array; readonly reach: number },
  pixels: number,
  lines: number,
  step: number,
  stride: number,
  outStep: number,
  outStride: number,
): Float64Array {
  const out = new Float64Array(pixels * lines);
  const last = pixels * SUB - 1;
  for (let line = 0; line < lines; line++) {
    for (let p = 0; p < pixels; p++) {
      let sum = 0;
      const first = p * SUB - reach;
      if (first >= 0 && first + weights.length - 1 <= last) {
        let at = line * stride + first * step;
        for (let k = 0; k < weights.length; k++, at += step) {
          sum += (weights[k] as number) * (from[at] as number);
        }
      } else {
        for (let k = 0; k < weights.length; k++) {
          const i = Math.min(last, Math.max(0, first + k));
          sum += (weights[k] as number) * (from[line * stride + i * step] as number);
        }
      }
      out[line * outStride + p * outStep] = sum;
    }
  }
  return out;
}

/** Small seeded generator (mulberry32, public domain), with normal numbers by Box and Muller. */
export function generator(seed: number): { uniform(): number; normal(): number } {
  let state = seed >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    uniform,
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
  };
}

/** A frame of 8-bit values with normal noise: standard deviation `noise`, rounded. */
export function expose(
  image: Float64Array,
  width: number,
  height: number,
  noise: number,
  random: { normal(): number },
  index = 0,
): GreyFrame {
  const data = Uint8Array.from(image, (value) =>
    Math.min(255, Math.max(0, Math.round(value + noise * random.normal()))),
  );
  return { index, width, height, data, white: 255 };
}

/** A matt sphere lit from above left, darker at the limb. */
export const lit =
  (bright: number) =>
  (u: number, v: number): number => {
    const w = Math.sqrt(Math.max(0, 1 - u * u - v * v));
    return bright * (0.35 + 0.65 * Math.max(0, -0.4 * u - 0.6 * v + 0.69 * w));
  };
