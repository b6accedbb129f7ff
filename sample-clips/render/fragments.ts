import { bulgeHeight, capHeight, type SealLaw, tearTime } from './film';
import type { Flight } from './motion';
import type { Point3 } from './projection';
import type { Random } from './random';

/** A piece of film flying: in the muzzle's frame (s, q, z), z away from the camera. */
export interface Fragment {
  readonly release: number;
  readonly tone: number;
  readonly startSpeed: number;
  /** Middle of the piece at time t. */
  middle(t: number): Point3;
  /** Speed along its direction at time t. */
  speed(t: number): number;
  /** Corners about the middle, and the piece's normal, at time t. */
  attitude(t: number): { readonly corners: readonly Point3[]; readonly normal: Point3 };
}

/** Falling speed of a piece of baking parchment, m/s: rough, from memory. */
const FALL = 1.4;
const GRAVITY = 9.81;

export interface FragmentPlan {
  readonly law: SealLaw;
  readonly count: number;
  /** Speed scale: pieces start at 0.5 to 1.8 times this. */
  readonly speed: number;
  /** The ball, which no piece may run into; null where none comes. */
  readonly ball: { readonly flight: Flight; readonly radius: number } | null;
  readonly until: number;
  /** Unit vector of gravity in the muzzle's frame (s, q). */
  readonly down: readonly [number, number];
}

export function fragments(plan: FragmentPlan, random: Random): Fragment[] {
  return Array.from({ length: plan.count }, (_, k) => {
    for (;;) {
      const factor = 0.5 + (1.3 * (k + random.uniform(0, 1))) / plan.count;
      const piece = drawFragment(plan, factor * plan.speed, random);
      if (clearOfBall(plan, piece)) return piece;
    }
  });
}

interface Drawn extends Fragment {
  readonly size: number;
}

function drawFragment(plan: FragmentPlan, speed: number, random: Random): Drawn {
  const { law } = plan;
  const azimuth = random.uniform(0, 2 * Math.PI);
  const distance = law.radius * random.uniform(0.1, 0.85);
  const release = tearTime(law, distance);
  const lean = random.uniform(0.04, 0.5);
  const radial: Point3 = [0, Math.sin(azimuth), Math.cos(azimuth)];
  const start: Point3 = [
    capHeight(law, bulgeHeight(law, release), distance),
    distance * radial[1],
    distance * radial[2],
  ];
  const direction: Point3 = [
    Math.cos(lean),
    Math.sin(lean) * radial[1],
    Math.sin(lean) * radial[2],
  ];
  // Way in which air takes all but 1/e of the speed: 2 m / (rho Cd A) for paper, tumbling.
  const slowing = random.uniform(0.06, 0.17);
  const size = law.radius * random.uniform(0.1, 0.34);
  const outline = irregular(size, random);
  const e1 = unit([random.uniform(-0.4, 0.4), random.uniform(-1, 1), random.uniform(-1, 1)]);
  const e2 = unit(cross(e1, direction));
  const spinAxis = unit([random.uniform(-1, 1), random.uniform(-1, 1), random.uniform(-1, 1)]);
  const turnsPerMetre = random.uniform(4, 22);
  const way = (t: number): number =>
    slowing * Math.log1p((speed * Math.max(0, t - release)) / slowing);
  return {
    release,
    size,
    tone: random.uniform(0.85, 1.1),
    startSpeed: speed,
    speed: (t) => speed / (1 + (speed * Math.max(0, t - release)) / slowing),
    middle: (t) => {
      const l = way(t);
      const fall =
        ((FALL * FALL) / GRAVITY) * Math.log(Math.cosh((GRAVITY * (t - release)) / FALL));
      return [
        start[0] + l * direction[0] + fall * plan.down[0],
        start[1] + l * direction[1] + fall * plan.down[1],
        start[2] + l * direction[2],
      ];
    },
    attitude: (t) => {
      const angle = 2 * Math.PI * turnsPerMetre * way(t);
      const a = turned(e1, spinAxis, angle);
      const b = turned(e2, spinAxis, angle);
      const corners = outline.map(
        ([u, v]): Point3 => [u * a[0] + v * b[0], u * a[1] + v * b[1], u * a[2] + v * b[2]],
      );
      return { corners, normal: cross(a, b) };
    },
  };
}

function clearOfBall(plan: FragmentPlan, piece: Drawn): boolean {
  const { ball } = plan;
  if (!ball) return true;
  const least = ball.radius + 0.6 * piece.size;
  const steps = 600;
  for (let i = 0; i <= steps; i++) {
    const t = piece.release + ((plan.until - piece.release) * i) / steps;
    const [s, q] = ball.flight.position(t);
    const [ps, pq, pz] = piece.middle(t);
    if (Math.hypot(ps - s, pq - q, pz) < least) return false;
  }
  return true;
}

function irregular(size: number, random: Random): [number, number][] {
  const corners = 5 + Math.floor(random.uniform(0, 4));
  const stretch = random.uniform(0.45, 1);
  return Array.from({ length: corners }, (_, k) => {
    const angle = (2 * Math.PI * (k + random.uniform(-0.3, 0.3))) / corners;
    const radius = size * random.uniform(0.6, 1);
    return [radius * Math.cos(angle), stretch * radius * Math.sin(angle)];
  });
}

function turned(v: Point3, axis: Point3, angle: number): Point3 {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const along = (v[0] * axis[0] + v[1] * axis[1] + v[2] * axis[2]) * (1 - c);
  const [x, y, z] = cross(axis, v);
  return [
    v[0] * c + x * s + axis[0] * along,
    v[1] * c + y * s + axis[1] * along,
    v[2] * c + z * s + axis[2] * along,
  ];
}

function cross(a: Point3, b: Point3): Point3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function unit(v: Point3): Point3 {
  const length = Math.hypot(v[0], v[1], v[2]);
  return [v[0] / length, v[1] / length, v[2] / length];
}
