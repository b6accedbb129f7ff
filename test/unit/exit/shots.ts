import { seededRandom } from '../../../src/core/random';
import type { FlightPoint, SharedInputs } from '../../../src/exit/types';

/** A made-up shot: what is true of it and how well it is filmed. */
export interface ShotClass {
  readonly velocity: number;
  readonly rate: number;
  readonly frames: number;
  readonly metresPerPixel: number;
  /** Standard uncertainty of a centre, px, drawn between these. */
  readonly noise: readonly [number, number];
  readonly dragCoefficient: number;
  /** Share of the speed lost near the muzzle, falling off exponentially over `decay`, m. */
  readonly loss: number;
  readonly decay: number;
  readonly lineTime: number;
  readonly timeU: number;
  /** Frames before the exit that are seen too, and the acceleration in the bore; left out: none. */
  readonly bore?: { readonly frames: number; readonly acceleration: number };
}

export const HIGH_SPEED: ShotClass = {
  velocity: 180,
  rate: 12_000,
  frames: 15,
  metresPerPixel: 0.33e-3,
  noise: [0.05, 0.1],
  dragCoefficient: 0.45,
  loss: 0,
  decay: 0.03,
  lineTime: 0,
  timeU: 0,
};
export const PHONE: ShotClass = {
  ...HIGH_SPEED,
  velocity: 12,
  rate: 240,
  frames: 10,
  metresPerPixel: 1e-3,
  noise: [0.05, 0.2],
  lineTime: 4e-6,
  timeU: 2e-6,
};

export const BALL = { diameter: 0.03, mass: 0.0019, density: 1.2 };

/** Stated standard uncertainties, from which the true shared inputs are drawn. */
const STATED = {
  scale: [
    { source: 'known length', type: 'B', u: 0.0008, dof: null },
    { source: 'end points', type: 'B', u: 0.0009, dof: null },
  ],
  clock: [{ source: 'recording rate', type: 'B', u: 5e-5, dof: null }],
  lineTimeRelative: 0.01,
  muzzle: 0.5,
  diameter: 5e-5,
  mass: 1e-5,
  density: 0.012,
} as const;

/**
 * Distances from the muzzle plane at times a frame apart, first frame `phase` of an interval after the exit:
 * the equation of motion integrated in small steps, shared with no code under test.
 */
export function fly(
  shot: ShotClass,
  times: readonly number[],
  ball: { diameter: number; mass: number; density: number },
): number[] {
  const { velocity, dragCoefficient, loss, decay } = shot;
  const k = (ball.density * Math.PI * ball.diameter ** 2 * dragCoefficient) / (8 * ball.mass);
  const g = (loss * velocity ** 2) / decay;
  const slow = (s: number, v: number) => k * v * v + g * Math.exp(-s / decay);
  const out: number[] = [];
  let [t, s, v] = [0, 0, velocity];
  for (const end of times) {
    const steps = Math.max(1, Math.ceil((end - t) / (1e-3 / velocity)));
    const h = (end - t) / steps;
    for (let i = 0; i < steps; i++) {
      const vm = v - (h / 2) * slow(s, v);
      const sm = s + (h / 2) * v;
      v -= h * slow(sm, vm);
      s += h * vm;
    }
    t = end;
    out.push(s);
  }
  return out;
}

export interface Simulated {
  readonly points: FlightPoint[];
  readonly shared: SharedInputs;
  readonly exitTime: number;
  /** As it truly was. */
  readonly ball: typeof BALL;
  /** True metres per pixel and time per line. */
  readonly scale: number;
  readonly lineTime: number;
  /** True speed at a nominal time on a line. */
  readonly speedAt: (frameTime: number, line: number) => number;
}

/** One shot as filmed: shared inputs and centres drawn from what is stated of them. */
export function simulate(shot: ShotClass, seed: number): Simulated {
  const random = seededRandom(seed, 7);
  const about = (value: number, u: number) => value + u * random.normal();
  const product = (sources: readonly { u: number }[]) =>
    sources.reduce((factor, { u }) => factor * about(1, u), 1);
  const noise = shot.noise[0] + (shot.noise[1] - shot.noise[0]) * random.uniform();
  const ball = {
    diameter: about(BALL.diameter, STATED.diameter),
    mass: about(BALL.mass, STATED.mass),
    density: about(BALL.density, STATED.density),
  };
  const scale = shot.metresPerPixel * product(STATED.scale);
  const stretch = product(STATED.clock);
  const lineTime = about(shot.lineTime, shot.lineTime * STATED.lineTimeRelative);
  const muzzle = about(0, STATED.muzzle);
  // Frames are numbered so that the exit falls between two of them.
  const firstFrame = 20;
  const exitTime = (firstFrame - random.uniform()) / shot.rate;
  // Across the readout: the line stays the same; along it: the line is the place itself.
  const lineOf = (along: number) => (shot.lineTime > 0 ? 100 + along : 100);
  const points: FlightPoint[] = [];
  const { frames: inBore, acceleration } = shot.bore ?? { frames: 0, acceleration: 0 };
  const placeAt = (time: number): number =>
    time < 0
      ? shot.velocity * time + (acceleration * time ** 2) / 2
      : (fly(shot, [time], ball)[0] as number);
  for (let i = -inBore; i < shot.frames; i++) {
    const frame = firstFrame + i;
    const frameTime = frame / shot.rate;
    const jitter = shot.timeU * random.normal();
    // The ball is where it is when its own line is read: solved by repetition.
    let along = ((frameTime - exitTime) * shot.velocity) / scale;
    for (let round = 0; round < (shot.lineTime > 0 ? 8 : 1); round++) {
      const time = frameTime * stretch + jitter + lineOf(along) * lineTime - exitTime * stretch;
      along = placeAt(time) / scale + muzzle;
    }
    points.push({
      frame,
      frameTime,
      line: lineOf(along),
      along: about(along, noise),
      alongU: noise,
      timeU: shot.timeU,
    });
  }
  const speedAt = (frameTime: number, line: number) => {
    const time = (frameTime - exitTime) * stretch + line * lineTime;
    const [before = 0, after = 0] = fly(shot, [time - 1e-5, time + 1e-5], ball);
    return (after - before) / 2e-5;
  };
  return {
    points,
    exitTime: exitTime * stretch,
    ball,
    scale,
    lineTime,
    speedAt,
    shared: {
      metresPerPixel: shot.metresPerPixel,
      scaleSources: STATED.scale,
      clockSources: STATED.clock,
      lineTime: { value: shot.lineTime, u: shot.lineTime * STATED.lineTimeRelative },
      muzzleU: STATED.muzzle,
      ballDiameter: { value: BALL.diameter, u: STATED.diameter },
      ballMass: { value: BALL.mass, u: STATED.mass },
      airDensity: { value: BALL.density, u: STATED.density },
      airTemperature: 293.15,
    },
  };
}
