import type { Cancellation } from '../core/cancellation';
import { success } from '../core/reason';
import { openEnd } from './boundary';
import { createColumn, refined } from './column';
import { createCurve, SAMPLES } from './curve';
import { densityAt, gasOf } from './gas';
import {
  boreArea,
  checkLauncher,
  doesNotLeave,
  gapShare,
  isGivenUp,
  plugLength,
  sealOpensAt,
  timeScale,
} from './launcher';
import { balance, dropFront, openFront, type PistonRun, startRun, stepRun } from './pistonRun';
import { type Profile, profileOf } from './profiles';
import type { Launch, Launcher, SealOpening } from './types';

/** The least residual pressure that gas is followed at, Pa: 1e-5 of an atmosphere holds back nothing. */
const LEAST_PRESSURE = 1;
/** The column behind the ball is short at first and has this share of the cells, as its length would; it is refined as it grows. */
const FIRST_SHARE = 8;
const FEWEST_CELLS = 10;
/** A profile of the whole barrel is kept at every so many samples. */
const SAMPLES_A_PROFILE = 4;
const CELLS = 100;
/** Steps between two looks at whether the work is still wanted. */
const STEPS_A_LOOK = 200;

export interface GasDynamicsOptions {
  /** Cells of the column ahead, and of that behind once the barrel is behind the ball; 10 or more. */
  readonly cells?: number;
  /** Told the share of the barrel that the ball has passed, 0..1, with every profile. */
  readonly onProgress?: (share: number) => void;
  readonly cancellation?: Cancellation;
}

export interface GasDynamicsLaunch extends Launch {
  readonly profiles: readonly Profile[];
  /** What the account of mass and energy lacks, as shares of all there was: rounding, or a fault. */
  readonly imbalance: { readonly mass: number; readonly energy: number };
}

/**
 * One-dimensional gas dynamics of a shot: the Euler equations behind and ahead of the ball, and the ball as a piston
 * between them.
 *
 * Taken for granted: a perfect gas; the flow alike over the bore; the rear seal gone at once at time 0, residual air
 * behind the ball as ahead of it, and the air outside at rest, drawn in without inertia before the mouth; the ball a
 * plug of its own volume; a gap without volume, its leak well mixed at once; walls that take no heat. The muzzle seal
 * is a wall until the pressure on it exceeds that outside by its burst pressure, then an opening at once; the ball's
 * leading point opens it at the latest and loses nothing to it. From that point on the gas ahead is followed no
 * further: the ball feels the outside pressure in front. Residual pressure below 1 Pa is taken as 1 Pa.
 *
 * Sources: Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, 3rd ed. 2009 (method); Seigel, The Theory of
 * High Speed Guns, AGARDograph 91 (1965) (the problem; from memory).
 */
export function launchByGasDynamics(
  launcher: Launcher,
  { cells = CELLS, onProgress, cancellation }: GasDynamicsOptions = {},
): GasDynamicsLaunch {
  checkLauncher(launcher);
  const run = runOf(launcher, cells);
  const { barrelLength, ballDiameter, startPosition, outsidePressure } = launcher;
  const leave = barrelLength - startPosition;
  const touch = leave - ballDiameter / 2;
  const scale = timeScale(launcher);
  const opensAt = sealOpensAt(launcher);
  const muzzle = openEnd(run.gas, openingOf(launcher, outsidePressure));
  const first = balance(run);
  const { curve, add } = createCurve();
  const profiles: Profile[] = [];
  let seal: Omit<SealOpening, 'lead'> | null = null;
  let exit: Launch['exit'] | null = null;
  /** Since when the ball rests. */
  let rest = 0;
  for (let step = 0; exit === null; step++) {
    if (step % STEPS_A_LOOK === 0) cancellation?.throwIfAborted();
    if (run.time >= (curve.time.length * scale) / SAMPLES) {
      if (curve.time.length % SAMPLES_A_PROFILE === 0) {
        profiles.push(profileOf(run, startPosition));
        onProgress?.(Math.max(0, run.way) / leave);
      }
      add(sampleOf(run, startPosition));
    }
    const { time, way, speed, endPressure } = run;
    const dt = stepRun(run, scale / SAMPLES);
    if (run.rear.cells < cells && run.rear.right / run.rear.cells > barrelLength / cells) {
      run.rear = refined(run.rear);
    }
    /** The instant in the step at a share of it. */
    const at = (share: number) => ({
      time: time + share * dt,
      distance: leave - way - share * (run.way - way),
    });
    if (seal === null && run.endPressure >= opensAt) {
      const share = (opensAt - endPressure) / (run.endPressure - endPressure);
      seal = { ...at(share), cause: 'pressure' };
      openFront(run, muzzle);
    }
    if (run.front !== null && run.way >= touch) {
      seal ??= { ...at((touch - way) / (run.way - way)), cause: 'contact' };
      dropFront(run);
    }
    if (run.way >= leave && seal !== null) {
      const share = (leave - way) / (run.way - way);
      const left = { time: time + share * dt, speed: speed + share * (run.speed - speed) };
      exit = success({ ...left, seal: { ...seal, lead: left.time - seal.time } });
    }
    if (run.speed !== 0) rest = run.time;
    if (exit === null && (isGivenUp(run.time, rest, scale) || turnedBack(run, launcher))) {
      exit = doesNotLeave(run.time, startPosition + run.way);
    }
  }
  // The last step goes past the muzzle plane: the curve ends there.
  const end = exit.ok && { time: exit.value.time, speed: exit.value.speed, position: barrelLength };
  add({ ...sampleOf(run, startPosition), ...end });
  onProgress?.(1);
  return { curve, exit, profiles, imbalance: imbalanceOf(run, first) };
}

const openingOf = ({ air, entranceLoss }: Launcher, pressure: number) => ({
  ...{ pressure, entranceLoss },
  temperature: air.temperature,
});

/** The ball at rest with residual air on both sides, the rear open. */
function runOf(launcher: Launcher, cells: number): PistonRun {
  const { air, residualPressure, startPosition, barrelLength, boreDiameter } = launcher;
  const gas = gasOf(air);
  const pressure = Math.max(residualPressure, LEAST_PRESSURE);
  const still = { pressure, velocity: 0, density: densityAt(gas, pressure, air.temperature) };
  const half = plugLength(launcher) / 2;
  return startRun({
    ...{ gas, area: boreArea(launcher), bore: boreDiameter, mass: launcher.ballMass },
    ...{ friction: launcher.ballFriction, wallFriction: launcher.wallFriction },
    gap: gapShare(launcher),
    rear: createColumn(
      gas,
      Math.max(FEWEST_CELLS, Math.ceil(cells / FIRST_SHARE)),
      0,
      startPosition - half,
      () => still,
    ),
    rearEnd: openEnd(gas, openingOf(launcher, air.pressure)),
    front: createColumn(gas, cells, startPosition + half, barrelLength, () => still),
    frontEnd: null,
    frontPressure: launcher.outsidePressure,
  });
}

const sampleOf = (run: PistonRun, start: number) => ({
  time: run.time,
  position: start + run.way,
  speed: run.speed,
  acceleration: run.acceleration,
  basePressure: run.passage.basePressure,
  frontPressure: run.passage.frontPressure,
  sealPressure: run.front === null ? run.frontPressure : run.endPressure,
});

/** The ball thrown back to the rear, where the gas behind it has no room left. */
const turnedBack = ({ rear }: PistonRun, { ballDiameter }: Launcher): boolean =>
  rear.right - rear.left < ballDiameter / 100;

function imbalanceOf(
  run: PistonRun,
  first: { readonly mass: number; readonly energy: number },
): GasDynamicsLaunch['imbalance'] {
  const last = balance(run);
  const { massIn, energyIn } = run.ledger;
  const share = (key: 'mass' | 'energy', passed: number) =>
    Math.abs(last[key] - first[key]) / (Math.abs(first[key]) + Math.abs(passed));
  return { mass: share('mass', massIn), energy: share('energy', energyIn) };
}
