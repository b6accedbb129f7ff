import type { GreyFrame } from '../../../src/core/frame';
import { type Random, seededRandom } from '../../../src/core/random';
import type { Background } from '../../../src/image/types';
import type { FindComponents } from '../../../src/seal/types';

/**
 * A small film of a seal, drawn from formulas of its own: a cap that grows from the plane, tears from a point
 * near its middle, throws fragments, and a ball that follows. Lengths in px, times in s from mid-exposure of frame 0.
 */
export interface Scene {
  readonly width: number;
  readonly height: number;
  readonly plane: readonly [number, number];
  readonly axis: readonly [number, number];
  readonly ballRadius: number;
  readonly frames: number;
  readonly interval: number;
  readonly exposure: number;
  /** Grey value of the film; the scene behind it is about 120. Null: no film. */
  readonly film: number | null;
  readonly onset: number;
  readonly burst: number;
  /** Height of the cap at the burst, and the power of time it grows with. */
  readonly bulge: number;
  readonly power: number;
  /** Time in which the tear reaches the ring. */
  readonly tearing: number;
  /** Height of the film left at the ring. */
  readonly collar: number;
  readonly fragments: number;
  /** Fragments fly at 0.5 to 1.8 times this, px/s. */
  readonly speed: number;
  /** When the ball's leading point passes the plane, and its speed, px/s; null: no ball. */
  readonly ball: { readonly contact: number; readonly speed: number } | null;
  readonly noise: number;
  readonly seed: number;
}

const READ_NOISE = 1.2;
const GAIN = 0.02;

interface Fragment {
  readonly along: number;
  readonly across: number;
  readonly speedAlong: number;
  readonly speedAcross: number;
  readonly radius: number;
}

export function drawScene(scene: Scene): {
  frames: GreyFrame[];
  background: Background;
} {
  const random = seededRandom(scene.seed, 3);
  const half = scene.ballRadius * 1.03;
  const centre = (random.uniform() - 0.5) * 0.6 * half;
  const fragments: Fragment[] = Array.from({ length: scene.fragments }, () => {
    const across = centre + (random.uniform() - 0.5) * half;
    const radius = scene.ballRadius * (0.08 + 0.12 * random.uniform());
    return {
      across,
      // Still part of the film: its outer edge lies on the bulge.
      along: scene.bulge * (1 - (across / half) ** 2) - radius,
      speedAlong: scene.speed * (0.5 + 1.3 * random.uniform()),
      speedAcross: scene.speed * 0.3 * (across / half + 0.6 * (random.uniform() - 0.5)),
      radius,
    };
  });
  const level = new Float32Array(scene.width * scene.height);
  each(scene, (at, along, across) => {
    level[at] = groundGrey(scene, along, across);
  });
  const frames = Array.from({ length: scene.frames }, (_, index) => {
    const sum = new Float32Array(level.length);
    const steps = 5;
    for (let step = 0; step < steps; step++) {
      const t = index * scene.interval + ((step + 0.5) / steps - 0.5) * scene.exposure;
      each(scene, (at, along, across) => {
        sum[at] =
          (sum[at] as number) +
          greyAt(scene, level[at] as number, fragments, centre, half, t, along, across) / steps;
      });
    }
    return {
      index,
      width: scene.width,
      height: scene.height,
      white: 255,
      data: shoot(sum, scene.noise, random),
    };
  });
  return {
    frames,
    background: {
      width: scene.width,
      height: scene.height,
      white: 255,
      level,
      noise: {
        readVariance: (scene.noise * READ_NOISE) ** 2 + 1 / 12,
        gain: scene.noise ** 2 * GAIN,
      },
    },
  };
}

function each(scene: Scene, visit: (at: number, along: number, across: number) => void): void {
  const [px, py] = scene.plane;
  const [ax, ay] = scene.axis;
  for (let y = 0; y < scene.height; y++) {
    for (let x = 0; x < scene.width; x++) {
      const dx = x - px;
      const dy = y - py;
      visit(y * scene.width + x, dx * ax + dy * ay, dy * ax - dx * ay);
    }
  }
}

/** Even light with a slope; the tube and its ring are dark. */
function groundGrey(scene: Scene, along: number, across: number): number {
  const air = 120 + 0.1 * along - 0.05 * across;
  const ring = clamp(0.5 - along);
  return Math.abs(across) < 1.5 * scene.ballRadius ? air + (45 - air) * ring : air;
}

function greyAt(
  scene: Scene,
  ground: number,
  fragments: readonly Fragment[],
  centre: number,
  half: number,
  t: number,
  along: number,
  across: number,
): number {
  if (along < -0.5) return ground;
  let grey = ground;
  // At rest too: seen from the side a flat film shows as a line, or it would jump into view at its onset.
  if (scene.film !== null) {
    const grown =
      Math.max(0, Math.min(1, (t - scene.onset) / (scene.burst - scene.onset))) ** scene.power;
    const since = t - scene.burst;
    const torn = since <= 0 ? 0 : half * Math.min(1, since / scene.tearing);
    let cover = 0;
    if (Math.abs(across) < half && Math.abs(across - centre) >= torn) {
      const share = since <= 0 ? 1 : Math.max(0.15, 1 - since / scene.tearing);
      cover =
        clamp(scene.bulge * grown * share * (1 - (across / half) ** 2) - along + 0.5) *
        clamp(along + 0.5);
    }
    if (since > 0 && Math.abs(across) < half) {
      const grownCollar = scene.collar * Math.min(1, since / scene.tearing);
      cover = Math.max(cover, clamp(grownCollar - along + 0.5) * clamp(along + 0.5));
    }
    if (since > 0) {
      for (const f of fragments) {
        const d = Math.hypot(
          along - f.along - f.speedAlong * since,
          across - f.across - f.speedAcross * since,
        );
        cover = Math.max(cover, clamp(f.radius - d + 0.5));
      }
    }
    grey += (scene.film - grey) * cover;
  }
  if (scene.ball !== null) {
    const nose = (t - scene.ball.contact) * scene.ball.speed;
    const d = Math.hypot(along - nose + scene.ballRadius, across);
    grey += (235 - grey) * clamp(scene.ballRadius - d + 0.5) * clamp(along + 0.5);
  }
  return grey;
}

const clamp = (x: number): number => Math.min(1, Math.max(0, x));

function shoot(grey: Float32Array, noise: number, random: Random): Uint8Array {
  return Uint8Array.from(grey, (g) => {
    const sigma = noise * Math.sqrt(READ_NOISE ** 2 + GAIN * g);
    return Math.round(Math.min(255, Math.max(0, g + sigma * random.normal())));
  });
}

/** Flood fill, 8-connected. */
export const findComponents: FindComponents = (mask, width, height) => {
  const left = mask.slice();
  const found: { area: number }[] = [];
  for (let start = 0; start < left.length; start++) {
    if (left[start] === 0) continue;
    left[start] = 0;
    const open = [start];
    let area = 0;
    for (let at = open.pop(); at !== undefined; at = open.pop()) {
      area++;
      const x = at % width;
      const y = (at - x) / width;
      for (let v = Math.max(0, y - 1); v <= Math.min(height - 1, y + 1); v++) {
        for (let u = Math.max(0, x - 1); u <= Math.min(width - 1, x + 1); u++) {
          if (left[v * width + u] !== 0) {
            left[v * width + u] = 0;
            open.push(v * width + u);
          }
        }
      }
    }
    found.push({ area });
  }
  return found;
};
