import type { Random } from '../render/random';

/** How the film parts. */
export const KINDS = ['centre', 'rim', 'petals', 'pieces'] as const;
export type Kind = (typeof KINDS)[number];

/** Something thrown out by the burst: it leaves (along, across) at `release` after the burst. */
export interface Shard {
  readonly along: number;
  readonly across: number;
  /** Half its extent along and across the axis, px. */
  readonly half: readonly [number, number];
  readonly release: number;
  readonly speed: number;
  readonly drift: number;
  readonly tone: number;
}

/**
 * One seal's life. Lengths in px along (out of the tube) and across the axis; times in frame intervals after the
 * middle of frame 0's exposure.
 */
export interface SealPlan {
  readonly kind: Kind;
  readonly width: number;
  readonly height: number;
  readonly plane: readonly [number, number];
  readonly axis: readonly [number, number];
  readonly ballRadius: number;
  readonly frames: number;
  /** Share of the frame interval. */
  readonly exposure: number;
  readonly onset: number;
  readonly burst: number;
  readonly bulge: {
    /** Half width of the film, height at the burst. */
    readonly half: number;
    readonly height: number;
    /** Profile (1 - |q|^blunt)^round. */
    readonly blunt: number;
    readonly round: number;
    /** Growth: a power of time, or an approach to the end height at this rate; the other is null. */
    readonly power: number;
    readonly yielding: number | null;
  };
  /** Where the tear starts, and how long it takes to reach the ring. */
  readonly tearAt: number;
  readonly tearing: number;
  /** Typical speed of what is thrown out, px a frame. */
  readonly speed: number;
  /** Time in which pieces gather speed, and the way in which air takes all but 1/e of it. */
  readonly gather: number;
  readonly slowing: number;
  readonly shards: readonly Shard[];
  readonly haze: { readonly opacity: number; readonly speed: number; readonly wide: number } | null;
  readonly ball: { readonly contact: number; readonly speed: number; readonly grey: number };
  readonly air: number;
  readonly film: number;
  /** Noise standard deviation at the film's level, and the share of its variance that grows with the light. */
  readonly noise: number;
  readonly photons: number;
}

export interface SealClass {
  readonly kind: Kind;
  readonly contrastToNoise: readonly [number, number];
}

/** First frames in which nothing moves: what the seal is compared with. */
const STILL = 9;

/** Draws a seal of a class; every property that is not the class's from its whole range. */
export function drawSeal({ kind, contrastToNoise }: SealClass, random: Random): SealPlan {
  const ballRadius = random.uniform(14, 20);
  const half = ballRadius * random.uniform(0.95, 1.1);
  const height = ballRadius * random.uniform(0.2, 0.7);
  const ballSpeed = ballRadius * random.uniform(0.35, 0.85);
  const speed = ballSpeed * logUniform(random, 0.3, 3);
  const yielding = random.uniform(0, 1) < 0.3 ? random.uniform(0.5, 2) : null;
  const power = random.uniform(1, 2.5);
  const endSlope = yielding === null ? power : (1.5 * yielding) / Math.expm1(yielding);
  // Gas that drives the film drives its pieces: they are not slower than it was.
  const shortest = (height * endSlope) / speed;
  const growing = Math.max(shortest, random.uniform(1.5, 7));
  const onset = STILL + random.uniform(0, 1);
  const burst = onset + growing;
  const close = random.uniform(0, 1) < 0.3;
  const contact = burst + (close ? random.uniform(0.6, 2) : random.uniform(3, 6));
  const angle = random.pick([0, Math.PI]) + random.uniform(-0.12, 0.12);
  const width = Math.ceil(4.4 * ballRadius);
  const tall = Math.ceil(3.6 * ballRadius);
  const inset = random.uniform(0.45, 0.55) * ballRadius;
  const air = random.uniform(60, 160);
  const contrast = random.uniform(35, 90) * (air > 110 && random.uniform(0, 1) < 0.6 ? -1 : 1);
  const tearing = random.uniform(0.3, 2.5);
  const tearAt = kind === 'rim' ? half * random.pick([-1, 1]) : half * random.uniform(-0.35, 0.35);
  const bulge = {
    half,
    height,
    blunt: random.uniform(2, 3.5),
    round: random.uniform(0.6, 1),
    power,
    yielding,
  };
  const count = { centre: [3, 9], rim: [0, 3], petals: [0, 4], pieces: [2, 6] }[kind] as number[];
  return {
    kind,
    width,
    height: tall,
    plane: [
      Math.cos(angle) > 0 ? inset : width - 1 - inset,
      (tall - 1) / 2 + random.uniform(-1, 1),
    ],
    axis: [Math.cos(angle), Math.sin(angle)],
    ballRadius,
    frames: Math.ceil(burst) + 7,
    exposure: random.uniform(0.1, 0.9),
    onset,
    burst,
    bulge,
    tearAt,
    tearing,
    speed,
    gather: random.uniform(0, 0.15),
    slowing: ballRadius * random.uniform(4, 11),
    shards: drawShards(count, kind === 'centre' ? tearing : 0, { bulge, tearAt, speed }, random),
    haze:
      random.uniform(0, 1) < 0.5
        ? {
            opacity: random.uniform(0.05, 0.35),
            speed: ballSpeed * logUniform(random, 0.3, 1.5),
            wide: random.uniform(0.4, 1),
          }
        : null,
    ball: { contact, speed: ballSpeed, grey: Math.min(250, air + random.uniform(50, 120)) },
    air,
    film: air + contrast,
    noise: Math.abs(contrast) / logUniform(random, ...contrastToNoise),
    photons: random.uniform(0, 0.8),
  };
}

function drawShards(
  [fewest, most]: readonly number[],
  tearing: number,
  plan: Pick<SealPlan, 'bulge' | 'tearAt' | 'speed'>,
  random: Random,
): Shard[] {
  const { half } = plan.bulge;
  return Array.from({ length: Math.floor(random.uniform(fewest ?? 0, most ?? 0)) }, () => {
    const from = Math.max(-0.9 * half, plan.tearAt - 0.7 * half);
    const to = Math.min(0.9 * half, plan.tearAt + 0.7 * half);
    const across = random.uniform(from, to);
    const size = half * random.uniform(0.06, 0.2);
    return {
      along: capHeight(plan, across, 1) - size,
      across,
      half: [size, half * random.uniform(0.06, 0.2)] as const,
      release: (tearing * Math.abs(across - plan.tearAt)) / (2 * half),
      speed: plan.speed * random.uniform(0.6, 1.3),
      drift: 0.25 * plan.speed * (across / half + random.uniform(-0.5, 0.5)),
      tone: random.uniform(0.7, 1.1),
    };
  });
}

/** How far the whole film stands out at a place across, grown to a share of its height at the burst. */
export function capHeight(
  { bulge }: Pick<SealPlan, 'bulge'>,
  across: number,
  grown: number,
): number {
  const q = Math.abs(across) / bulge.half;
  return q >= 1 ? 0 : bulge.height * grown * (1 - q ** bulge.blunt) ** bulge.round;
}

/** Share of its height at the burst that the film has at a time. */
export function growth({ bulge, onset, burst }: SealPlan, time: number): number {
  const u = Math.min(1, Math.max(0, (time - onset) / (burst - onset)));
  return bulge.yielding === null
    ? u ** bulge.power
    : Math.expm1(-bulge.yielding * u ** 1.5) / Math.expm1(-bulge.yielding);
}

/** Way flown in a time since release at a start speed: gathered first, then lost to the air. */
export function flown(plan: SealPlan, speed: number, since: number): number {
  if (since <= 0) return 0;
  const { gather, slowing } = plan;
  const free = gather > 0 ? since - gather * -Math.expm1(-since / gather) : since;
  return slowing * -Math.expm1((-speed * free) / slowing);
}

/** Whether so many frames show the opening before the ball comes, with a piece of it still in view. */
export function opensFor(plan: SealPlan, frames: number, reach: number): boolean {
  const first = Math.ceil(plan.burst - plan.exposure / 2);
  const last = first + frames - 1;
  if (last >= Math.ceil(plan.ball.contact)) return false;
  return plan.bulge.height + flown(plan, plan.speed, last - plan.burst) < reach;
}

const logUniform = (random: Random, low: number, high: number): number =>
  low * (high / low) ** random.uniform(0, 1);
