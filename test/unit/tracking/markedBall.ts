import { unrollSurface } from '../../../src/image/surface';
import type { Face } from '../../../src/tracking/faces';
import { generator } from '../image/rendering';

type Vector = readonly [x: number, y: number, z: number];

/** A film of a ball that turns in flight, drawn around the ball. */
export interface MarkedFilm {
  readonly seed: number;
  /** rad/s. */
  readonly spin: number;
  /** Axis, z towards the camera; left out: the line of sight. */
  readonly axis?: Vector;
  readonly mark: 'spot' | 'stripe' | 'bright' | 'none';
  readonly light: (u: number, v: number) => number;
  /** A lamp's reflection on the ball. */
  readonly highlight?: boolean;
  /** Frames in which something small passes before the ball. */
  readonly passers?: readonly number[];
  readonly frames?: number;
}

export const RATE = 12_000;
const RADIUS = 13;
const SIZE = 34;
const SUB = 3;
const BRIGHT = 120;
const BEHIND = 60;
const NOISE = 2.5;
/** Standard deviation of the measured middle, px. */
const MIDDLE_U = 0.03;

const lambert =
  (ambient: number, [lx, ly, lz]: Vector) =>
  (u: number, v: number): number =>
    ambient +
    (1 - ambient) * Math.max(0, lx * u + ly * v + lz * Math.sqrt(Math.max(0, 1 - u * u - v * v)));
/** Light from the front, and from one side so that a part lies in its own shadow. */
export const FRONT = lambert(0.55, [-0.3, -0.5, 0.81]);
export const SIDE = lambert(0.2, [-0.75, -0.4, 0.52]);

/** Reflectance of the ball's surface at a point of it; the mark's middle lies half a radius off the axis. */
function reflectance(mark: MarkedFilm['mark'], [x, y, z]: Vector): number {
  if (mark === 'none' || z < 0) return 1;
  if (mark === 'stripe') return Math.abs(y) < 0.12 && Math.abs(x) < 0.8 ? 0.4 : 1;
  const inside = Math.hypot(x - 0.5, y) < 0.22;
  return inside ? (mark === 'bright' ? 1.5 : 0.35) : 1;
}

/** Rodrigues' rotation about a unit axis. */
function rotated([x, y, z]: Vector, [nx, ny, nz]: Vector, angle: number): Vector {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const along = (nx * x + ny * y + nz * z) * (1 - c);
  return [
    c * x + s * (ny * z - nz * y) + along * nx,
    c * y + s * (nz * x - nx * z) + along * ny,
    c * z + s * (nx * y - ny * x) + along * nz,
  ];
}

/** The faces of the ball in each frame: pictures drawn, then unrolled beside the ball without its mark. */
export function facesOf(film: MarkedFilm): Face[] {
  const random = generator(film.seed);
  const phase = 2 * Math.PI * random.uniform();
  const start = [SIZE / 2 + random.uniform(), SIZE / 2 + random.uniform()] as const;
  const step = 7 + random.uniform();
  const drift = random.uniform() - 0.5;
  return Array.from({ length: film.frames ?? 9 }, (_, frame) => {
    const time = frame / RATE;
    const cx = start[0] - 1 + ((frame * step) % 1);
    const cy = start[1] - 1 + ((frame * drift) % 1);
    const passes = film.passers?.includes(frame) === true;
    const data = new Uint8Array(SIZE * SIZE);
    for (let p = 0; p < data.length; p++) {
      let sum = 0;
      for (let q = 0; q < SUB * SUB; q++) {
        const x = (p % SIZE) + ((q % SUB) + 0.5) / SUB - 0.5;
        const y = Math.floor(p / SIZE) + (Math.floor(q / SUB) + 0.5) / SUB - 0.5;
        sum +=
          passes && Math.hypot(x - cx + 12 - 4 * (frame % 7), y - cy - 3) < 2.5 ? 30 : at(x, y);
      }
      const grey = sum / SUB ** 2 + NOISE * random.normal();
      data[p] = Math.max(0, Math.min(255, Math.round(grey)));
    }
    function at(x: number, y: number): number {
      const u = (x - cx) / RADIUS;
      const v = (y - cy) / RADIUS;
      const w2 = 1 - u * u - v * v;
      if (w2 < 0) return BEHIND;
      const body = rotated(
        rotated([u, v, Math.sqrt(w2)], film.axis ?? [0, 0, 1], -film.spin * time),
        [0, 0, 1],
        -phase,
      );
      const glint = film.highlight && Math.hypot(u + 0.25, v + 0.4) < 0.12 ? 60 : 0;
      return BEHIND + BRIGHT * film.light(u, v) * reflectance(film.mark, body) + glint;
    }
    const mx = cx + MIDDLE_U * random.normal();
    const my = cy + MIDDLE_U * random.normal();
    const surface = unrollSurface(
      { index: frame, width: SIZE, height: SIZE, white: 255, data },
      {
        middle: [mx, my],
        radius: RADIUS,
        shape: [1, 0, 0, 1],
        plain: (x, y) => BEHIND + BRIGHT * film.light((x - mx) / RADIUS, (y - my) / RADIUS),
        noise: () => NOISE ** 2 + 1 / 12,
        faulty: () => false,
      },
    );
    return { frame, time, surface, contrast: 0.7 * BRIGHT };
  });
}
