/**
 * A ball between two columns of gas, stepped in time. What the gas does at the ball, the ball feels in the same step,
 * by the speed it has on average over the step, so mass is kept, and energy of gas and ball together, to rounding.
 */
import { atWall, type OpenEnd } from './boundary';
import {
  advance,
  type Column,
  contents,
  type EndFlux,
  longestStep,
  predict,
  rubOnWall,
  stateAtEnd,
} from './column';
import type { Gas, GasState } from './gas';
import { type Passage, passBall } from './piston';
import type { Facing } from './waves';

/** Waves cross no more than this share of a cell in a step. */
const COURANT = 0.8;
/**
 * After an end opens the first steps are shorter (Toro 2009, ch. 6.3.2): gas still at rest says nothing of the waves to
 * come, which into little residual air run at up to five times the speed of sound.
 */
const FIRST_STEPS = 5;
const FIRST_SHARE = 0.2;

export interface PistonRun {
  readonly gas: Gas;
  /** Bore: area m^2, diameter m. */
  readonly area: number;
  readonly bore: number;
  /** Ball: mass kg, friction N, gap around it. */
  readonly mass: number;
  readonly friction: number;
  readonly gap: number;
  /** Darcy's factor. */
  readonly wallFriction: number;
  rear: Column;
  /** What is at the far ends; null: a wall. */
  readonly rearEnd: OpenEnd | null;
  front: Column | null;
  /** Opened by `openFront`. */
  frontEnd: OpenEnd | null;
  /** Pressure ahead where no gas there is followed, Pa. */
  readonly frontPressure: number;
  time: number;
  /** Steps since an end opened. */
  steps: number;
  /** Way of the ball from its start, m. */
  way: number;
  speed: number;
  acceleration: number;
  passage: Passage;
  /** At the front column's far end, Pa. */
  endPressure: number;
  readonly ledger: Ledger;
}

/** What came in through the far ends and what friction and a removed column took out: kg, J. */
interface Ledger {
  massIn: number;
  energyIn: number;
}

type Start = Omit<
  PistonRun,
  'time' | 'steps' | 'way' | 'speed' | 'acceleration' | 'passage' | 'endPressure' | 'ledger'
> & { readonly speed?: number };

export function startRun(start: Start): PistonRun {
  const speed = start.speed ?? 0;
  const { gas, rear, front, gap } = start;
  const last = rear.cells - 1;
  const ahead = front === null ? start.frontPressure : cellState(front, 0);
  const passage = passBall(gas, cellState(rear, last), ahead, speed, gap);
  return {
    ...start,
    ...{ time: 0, steps: 0, way: 0, speed, acceleration: 0, passage },
    endPressure:
      typeof ahead === 'number'
        ? ahead
        : cellState(front as Column, (front as Column).cells - 1).pressure,
    ledger: { massIn: 0, energyIn: 0 },
  };
}

const cellState = ({ state }: Column, i: number): GasState => ({
  density: state.density[i] as number,
  velocity: state.velocity[i] as number,
  pressure: state.pressure[i] as number,
});

/** Mass of the gas, kg, and energy of gas and ball, J, less what came in: constant for ever. */
export function balance(run: PistonRun): { mass: number; energy: number } {
  const gas = [run.rear, run.front].map((column) =>
    column === null ? { mass: 0, energy: 0 } : contents(column),
  );
  const sum = (key: 'mass' | 'energy') => run.area * gas.reduce((all, one) => all + one[key], 0);
  return {
    mass: sum('mass') - run.ledger.massIn,
    energy: sum('energy') + 0.5 * run.mass * run.speed ** 2 - run.ledger.energyIn,
  };
}

/** One step, at most `most` s long; returns its length. */
export function stepRun(run: PistonRun, most: number): number {
  const { gas, rear, front, area, mass, ledger } = run;
  const courant = run.steps < FIRST_STEPS ? FIRST_SHARE * COURANT : COURANT;
  let dt = Math.min(most, longestStep(rear, 0, run.speed, courant));
  if (front !== null) dt = Math.min(dt, longestStep(front, run.speed, 0, courant));
  const middle = run.speed + 0.5 * run.acceleration * dt;
  predict(rear, dt, 0, middle);
  if (front !== null) predict(front, dt, middle, 0);
  const ahead = front === null ? run.frontPressure : stateAtEnd(front, 'left');
  const passage = passBall(gas, stateAtEnd(rear, 'right'), ahead, middle, run.gap);
  const force = area * (passage.push - passage.hold);
  const rubbed = speedAfter(run.speed, force, run.friction, mass, dt);
  const average = 0.5 * (run.speed + rubbed);
  const { leak, push, hold } = passage;
  const energy = passage.carried + passage.basePressure * average;
  const left = farEnd(gas, rear, 'left', run.rearEnd);
  advance(rear, dt, left, { mass: leak, momentum: push, energy, speed: average });
  ledger.massIn += area * dt * left.mass;
  ledger.energyIn += area * dt * left.energy;
  if (front !== null) {
    const right = farEnd(gas, front, 'right', run.frontEnd);
    const passed = energy - average * (push - hold);
    advance(front, dt, { mass: leak, momentum: hold, energy: passed, speed: average }, right);
    ledger.massIn -= area * dt * right.mass;
    ledger.energyIn -= area * dt * right.energy;
    run.endPressure = right.pressure;
  } else {
    ledger.massIn -= area * dt * leak;
    ledger.energyIn -= area * dt * (energy - average * (push - hold));
  }
  // The work of the ball's friction leaves with the barrel.
  ledger.energyIn -= average * dt * (force - (mass * (rubbed - run.speed)) / dt);
  if (run.wallFriction > 0) {
    for (const column of front === null ? [rear] : [rear, front]) {
      rubOnWall(column, dt, run.wallFriction, run.bore);
    }
  }
  run.acceleration = (rubbed - run.speed) / dt;
  run.time += dt;
  run.steps += 1;
  run.way += average * dt;
  run.speed = rubbed;
  run.passage = passage;
  return dt;
}

/** The muzzle seal is gone: what was a wall is an opening. */
export function openFront(run: PistonRun, end: OpenEnd): void {
  run.frontEnd = end;
  run.steps = 0;
}

/** The gas ahead is followed no further: it leaves the account. */
export function dropFront(run: PistonRun): void {
  if (run.front === null) return;
  const { mass, energy } = contents(run.front);
  run.ledger.massIn -= run.area * mass;
  run.ledger.energyIn -= run.area * energy;
  run.front = null;
}

/** Speed after `dt` with dry friction: it holds a ball at rest and stops one, but drives none. */
function speedAfter(
  speed: number,
  force: number,
  friction: number,
  mass: number,
  dt: number,
): number {
  const free = speed + (force / mass) * dt;
  const most = (friction / mass) * dt;
  return Math.abs(free) <= most ? 0 : free - Math.sign(free) * most;
}

/** What passes the far end of a column in the direction of x, and the pressure there. */
function farEnd(
  gas: Gas,
  column: Column,
  end: 'left' | 'right',
  open: OpenEnd | null,
): EndFlux & { readonly pressure: number } {
  const state = stateAtEnd(column, end);
  const direction = end === 'left' ? 1 : -1;
  const facing: Facing = { ...state, inward: direction * state.velocity };
  const { density, pressure, inward } = open === null ? atWall(gas, facing, 0) : open(facing);
  const heat = (gas.gamma / (gas.gamma - 1)) * pressure;
  return {
    ...{ speed: 0, pressure },
    mass: direction * density * inward,
    momentum: density * inward ** 2 + pressure,
    energy: direction * inward * (heat + 0.5 * density * inward ** 2),
  };
}
