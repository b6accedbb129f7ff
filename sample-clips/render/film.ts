import type { Random } from './random';

/** What the film and its pieces need to know of the shot. Times in seconds, lengths in metres. */
export interface SealLaw {
  readonly onset: number;
  readonly burst: number;
  /** Time the tear takes from the middle to the ring. */
  readonly opening: number;
  /** How far the middle stands out at the burst. */
  readonly height: number;
  /** Radius of the free film. */
  readonly radius: number;
}

/** Share of the radius the tear ends at: a collar stays under the ring. */
const COLLAR = 0.93;

/** How far the film's middle stands (or would stand) out of the ring at time t. */
export function bulgeHeight(law: SealLaw, t: number): number {
  if (t <= law.onset) return 0;
  const span = law.burst - law.onset;
  if (t <= law.burst) {
    const f = (t - law.onset) / span;
    return law.height * f * f * (0.3 + 0.7 * f);
  }
  // Torn: pressure goes, the rest of the film coasts on a little.
  const speed = (2.7 * law.height) / span;
  const rest = law.opening / 2;
  return law.height + speed * rest * (1 - Math.exp(-(t - law.burst) / rest));
}

/** Height of the bulge, a spherical cap, at a distance from the axis. */
export function capHeight(law: SealLaw, middle: number, distance: number): number {
  if (middle < 1e-7 || distance >= law.radius) return 0;
  const sphere = (law.radius * law.radius + middle * middle) / (2 * middle);
  const rim = Math.sqrt(Math.max(0, sphere * sphere - law.radius * law.radius));
  const back = middle <= law.radius ? rim : -rim;
  return Math.sqrt(Math.max(0, sphere * sphere - distance * distance)) - back;
}

/** Radius of the hole torn in the film; 0 while it is whole. */
export function holeRadius(law: SealLaw, t: number): number {
  if (t <= law.burst) return 0;
  return COLLAR * law.radius * Math.min(1, (t - law.burst) / law.opening) ** 0.8;
}

/** When the tear reaches a distance from the axis. */
export function tearTime(law: SealLaw, distance: number): number {
  return law.burst + law.opening * Math.min(1, distance / (COLLAR * law.radius)) ** 1.25;
}

/** Ragged edge of the torn collar: extra height at q, one pattern for each half of the ring. */
export type Ragged = (q: number, t: number) => number;

export function raggedEdge(law: SealLaw, random: Random): Ragged {
  const knots = 15;
  const heights = Float64Array.from({ length: knots + 1 }, () => random.uniform(0, 1) ** 2);
  const phases = Float64Array.from({ length: knots + 1 }, () => random.uniform(0, 2 * Math.PI));
  const longest = 0.32 * law.radius;
  return (q, t) => {
    if (t <= law.burst) return 0;
    const grown = Math.min(1, (t - law.burst) / law.opening);
    const place = ((q / law.radius + 1) / 2) * knots;
    const k = Math.min(knots - 1, Math.max(0, Math.floor(place)));
    const tooth = (i: number): number => {
      const settled = Math.exp(-(t - law.burst) / (12 * law.opening));
      const beat = Math.sin((t - law.burst) / (0.35 * law.opening) + (phases[i] as number));
      return (heights[i] as number) * (1 + 0.25 * settled * beat);
    };
    const f = place - k;
    return longest * grown * ((1 - f) * tooth(k) + f * tooth(k + 1));
  };
}

/** A flap that stays at the ring: its place on the rim, length, and how it swings outwards. */
export interface Flap {
  readonly azimuth: number;
  readonly halfWidth: number;
  readonly length: number;
  /** Angle from the axis, outwards positive, at time t. */
  angle(t: number): number;
}

export function flaps(law: SealLaw, count: number, random: Random): Flap[] {
  return Array.from({ length: count }, (_, k) => {
    const start = tearTime(law, 0.5 * law.radius);
    const final = random.uniform(0.5, 1.3);
    const swing = random.uniform(0.3, 0.5);
    const phase = random.uniform(0, 1);
    return {
      azimuth: ((k + random.uniform(0.1, 0.9)) / count) * 2 * Math.PI,
      halfWidth: random.uniform(0.12, 0.28),
      length: law.radius * random.uniform(0.25, 0.55),
      angle: (t) => {
        const f = (t - start) / law.opening;
        if (f < 0) return -1.2;
        const settled = final - (final + 1.2) * Math.exp(-3 * f);
        return settled + swing * Math.exp(-f / 9) * Math.sin(2.4 * f + phase) * (1 - Math.exp(-f));
      },
    };
  });
}
