import { airViscosity, soundSpeed } from '../../../src/core/air';
import { dragBounds } from '../../../src/exit/sphereDrag';
import type { FlightPoint, SharedInputs } from '../../../src/exit/types';
import type { Random } from '../render/random';
import {
  displacedShare,
  dragFactor,
  fly,
  type LossShape,
  type TrueBall,
  type TrueFlight,
} from './positionsFlight';

/** What all shots of a kind have in common; the rest is drawn for each. */
export interface ShotKind {
  readonly motion: TrueFlight['motion'];
  /** 'any': either, as likely. */
  readonly shape: LossShape | 'any';
  /** What the true drag coefficient is drawn from: what is known of any ball, or of this one at its speed. */
  readonly coefficient: 'any' | 'fromBallAndAir';
  /**
   * True share of the speed lost near the muzzle, in masses of displaced air over that of the ball; null: drawn from
   * what is known of it beforehand.
   */
  readonly loss: number | null;
  /** Length of the zone, ball diameters; null: drawn from what is known of it beforehand. */
  readonly reach: number | null;
  /** A light ball in the air of a room, or a steel ball shot into a chamber pumped down to a hundredth of it. */
  readonly into: 'air' | 'chamber';
  /** Share of centres that are grossly wrong. */
  readonly grossErrors: number;
}

export interface TrueShot {
  readonly points: FlightPoint[];
  readonly shared: SharedInputs;
  readonly velocity: number;
  /** s on the nominal clock's zero. */
  readonly exitTime: number;
}

/** What is known beforehand of loss and length of the zone: see `muzzleLossOf` and `ZONE_PROFILES` of the estimator. */
const LOSS_SHARE = { mean: 0.5, sd: 0.6 } as const;
const REACH = [1.5, 3.5] as const;
/** Relative standard uncertainties that are the same in every shot. */
const STATED = { exposure: 0.05, lineTime: 0.01, density: 0.01, mass: 0.005 } as const;
const AIR_TEMPERATURE = 293.15;
const PICTURE_WIDTH = 1280;
const FIRST_FRAME = 20;
const FLASHES = [-Math.sqrt(0.6), 0, Math.sqrt(0.6)] as const;
const FLASH_WEIGHTS = [5 / 18, 8 / 18, 5 / 18] as const;

const logUniform = (random: Random, low: number, high: number): number =>
  Math.exp(random.uniform(Math.log(low), Math.log(high)));
/** A true value drawn from a stated one and its standard uncertainty. */
const about = (random: Random, value: number, u: number): number => value + u * random.normal(0, 1);

/** One shot as filmed: everything stated is drawn first, then what is true about what is stated. */
export function takeShot(kind: ShotKind, random: Random): TrueShot {
  const frames = Math.round(logUniform(random, 6, 60));
  const field = logUniform(random, 0.15, 1);
  const velocity = logUniform(random, 10, 300);
  const rate = (velocity * frames) / field;
  const metresPerPixel = field / PICTURE_WIDTH;
  const stated = statedBall(kind, random);
  const relative = {
    length: logUniform(random, 2e-4, 2e-3),
    ends: logUniform(random, 2e-4, 2e-3),
    depth: logUniform(random, 2e-4, 3e-3),
    rate: logUniform(random, 1e-6, 2e-4),
  };
  const muzzleU = random.uniform(0.2, 1);
  // Read out along the flight, across it, or all at once.
  const readout = random.pick(['global', 'global', 'across', 'along', 'against']);
  const lineTime = readout === 'global' ? 0 : random.uniform(0.1, 0.8) / rate / PICTURE_WIDTH;
  const noise = logUniform(random, 0.03, 0.2);
  const exposure = random.uniform(0.02, 0.5) / rate;
  const blur = (exposure * velocity) / metresPerPixel;
  const alongU = noise * Math.sqrt(1 + (blur * metresPerPixel) / stated.diameter);
  const jitter = random.pick([0, 1]) * random.uniform(0.2, 1);
  const timeU = (jitter * noise * metresPerPixel) / velocity;

  const ball: TrueBall = {
    diameter: about(random, stated.diameter, stated.diameterU),
    mass: about(random, stated.mass, STATED.mass * stated.mass),
    density: about(random, stated.density, STATED.density * stated.density),
  };
  const flight: TrueFlight = {
    velocity,
    motion: kind.motion,
    drag:
      kind.motion === 'uniform' ? 0 : dragFactor(ball, coefficientOf(kind, ball, velocity, random)),
    loss:
      displacedShare(ball) * (kind.loss ?? LOSS_SHARE.mean + LOSS_SHARE.sd * random.normal(0, 1)),
    shape: kind.shape === 'any' ? random.pick(['straight', 'exponential']) : kind.shape,
    reach: ball.diameter * (kind.reach ?? random.uniform(...REACH)),
  };
  const scale =
    metresPerPixel *
    about(random, 1, relative.length) *
    about(random, 1, relative.ends) *
    about(random, 1, relative.depth);
  const stretch = about(random, 1, relative.rate);
  const trueLineTime = about(random, lineTime, STATED.lineTime * lineTime);
  const trueExposure = about(random, exposure, STATED.exposure * exposure);
  const muzzle = about(random, 0, muzzleU);
  const exitTime = (FIRST_FRAME - random.uniform(0, 1)) / rate;

  const lineOf = (along: number): number => {
    if (readout === 'along') return along;
    return readout === 'against' ? PICTURE_WIDTH - along : PICTURE_WIDTH / 2;
  };
  /** Mean place over the exposure whose middle is at `time` after the exit. */
  const placeAt = (time: number): number =>
    fly(
      flight,
      FLASHES.map((share) => time + (share * trueExposure) / 2),
    ).reduce((sum, s, i) => sum + (FLASH_WEIGHTS[i] as number) * s, 0);
  const points: FlightPoint[] = [];
  for (let i = 0; i < frames; i++) {
    const frameTime = (FIRST_FRAME + i) / rate;
    // Time stamps are rounded.
    const late = timeU * Math.sqrt(3) * random.uniform(-1, 1);
    let along = ((frameTime - exitTime) * velocity) / scale;
    // The ball is where it is when its own line is read: solved by repetition.
    for (let round = 0; round < (lineTime > 0 ? 8 : 1); round++) {
      const time = (frameTime - exitTime) * stretch + late + lineOf(along) * trueLineTime;
      along = placeAt(time) / scale + muzzle;
    }
    const gross = random.uniform(0, 1) < kind.grossErrors ? random.normal(0, 30) : 0;
    const measured = along + alongU * (random.normal(0, 1) + gross);
    points.push({
      frame: FIRST_FRAME + i,
      frameTime,
      line: lineOf(measured),
      along: measured,
      alongU,
      timeU,
    });
  }
  return {
    points,
    velocity,
    exitTime: exitTime * stretch,
    shared: {
      metresPerPixel,
      scaleSources: [
        { source: 'known length', type: 'B', u: relative.length, dof: null },
        { source: 'end points', type: 'B', u: relative.ends, dof: null },
        { source: 'depth off the flight line', type: 'B', u: relative.depth, dof: null },
      ],
      clockSources: [{ source: 'recording rate', type: 'B', u: relative.rate, dof: null }],
      lineTime: { value: lineTime, u: STATED.lineTime * lineTime },
      muzzleU,
      ballDiameter: { value: stated.diameter, u: stated.diameterU },
      ballMass: { value: stated.mass, u: STATED.mass * stated.mass },
      airDensity: { value: stated.density, u: STATED.density * stated.density },
      airTemperature: AIR_TEMPERATURE,
    },
  };
}

/** See `WIDE_DRAG` and `dragBounds` of the estimator: what it states is what the truth is drawn from. */
function coefficientOf(
  { coefficient }: ShotKind,
  { density, diameter }: TrueBall,
  velocity: number,
  random: Random,
): number {
  if (coefficient === 'any') return Math.max(0.02, random.normal(0.5, 0.25));
  const re = (density * velocity * diameter) / airViscosity(AIR_TEMPERATURE);
  return random.uniform(...dragBounds(re, velocity / soundSpeed(AIR_TEMPERATURE)));
}

function statedBall({ into }: ShotKind, random: Random) {
  const diameter = random.uniform(0.02, 0.04);
  const volume = (Math.PI * diameter ** 3) / 6;
  // A shell as light as a table-tennis ball (84 kg/m^3), or a solid plastic one.
  const material = into === 'chamber' ? 7800 : logUniform(random, 80, 1000);
  return {
    diameter,
    diameterU: 5e-5,
    mass: material * volume,
    density: random.uniform(1.1, 1.25) * (into === 'chamber' ? 0.01 : 1),
  };
}
