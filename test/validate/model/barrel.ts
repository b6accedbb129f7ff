import { openEnd } from '../../../src/launch/boundary';
import { createColumn } from '../../../src/launch/column';
import { densityAt } from '../../../src/launch/gas';
import { balance, type PistonRun, startRun, stepRun } from '../../../src/launch/pistonRun';

/** Dry air of 20 degrees and one atmosphere. */
export const DRY = { gamma: 1.4, constant: 287.05287 };
export const STILL_AIR = {
  density: densityAt(DRY, 101_325, 293.15),
  velocity: 0,
  pressure: 101_325,
};
/** The ball and bore of the published tables. */
const AREA = (Math.PI / 4) * 0.04 ** 2;
const MASS = 0.0027;

const BARE = {
  ...{ gas: DRY, area: AREA, bore: 0.04, mass: MASS },
  ...{ friction: 0, gap: 0, wallFriction: 0, frontEnd: null, frontPressure: 0 },
};

/** Runs on until the ball has gone so far, m: its speed and the time there. */
function runTo(run: PistonRun, way: number): { speed: number; time: number } {
  for (;;) {
    const before = { way: run.way, speed: run.speed, time: run.time };
    stepRun(run, 1);
    if (run.way < way) continue;
    const share = (way - before.way) / (run.way - before.way);
    return {
      speed: before.speed + share * (run.speed - before.speed),
      time: before.time + share * (run.time - before.time),
    };
  }
}

/** The ball of the tables driven into a vacuum by a barrel full of still air that is long enough for no echo. */
export function fullBarrel(
  ways: readonly number[],
  cells: number,
): { speed: number; time: number }[] {
  const length = 6.5;
  const rear = createColumn(DRY, cells, -length, 0, () => STILL_AIR);
  const run = startRun({ ...BARE, rear, rearEnd: null, front: null });
  return ways.map((way) => runTo(run, way));
}

/**
 * Speed after 1 m from an open, frictionless mouth, of a ball `heavier` times as heavy as that of the tables, with a
 * centimetre of still air behind it at first.
 */
export function fromMouth(heavier: number, cells: number): number {
  const rear = createColumn(DRY, cells, 0, 0.01, () => STILL_AIR);
  const opening = { pressure: 101_325, temperature: 293.15, entranceLoss: 0 };
  const run = startRun({
    ...BARE,
    ...{ mass: heavier * MASS, rear, rearEnd: openEnd(DRY, opening), front: null },
  });
  return runTo(run, 1).speed;
}

/** What is left of mass and energy after a ball has flown to and fro between closed ends for 30 ms, as shares. */
export function closedBarrel(
  gap: number,
  cells: number,
): { mass: number; energy: number; turns: number } {
  const compressed = { density: STILL_AIR.density * 3, velocity: 0, pressure: 4 * 101_325 };
  const rear = createColumn(DRY, cells, 0, 0.1, () => compressed);
  const front = createColumn(DRY, cells, 0.13, 1, () => STILL_AIR);
  const run = startRun({ ...BARE, gap, rear, rearEnd: null, front });
  const first = balance(run);
  let turns = 0;
  while (run.time < 0.03) {
    const { speed } = run;
    stepRun(run, 1);
    if (speed * run.speed < 0) turns++;
  }
  const last = balance(run);
  return {
    mass: Math.abs(last.mass / first.mass - 1),
    energy: Math.abs(last.energy / first.energy - 1),
    turns,
  };
}

/** A ball held at a speed towards a closed end: strength of the shock before it, its Mach number, and its first echo's strength. */
export function drivenShock(
  speed: number,
  cells: number,
): { strength: number; mach: number; echo: number } {
  const sound = Math.sqrt((DRY.gamma * STILL_AIR.pressure) / STILL_AIR.density);
  const rear = createColumn(DRY, 50, -50, 0, () => STILL_AIR);
  const front = createColumn(DRY, cells, 0, 1, () => STILL_AIR);
  const run = startRun({ ...BARE, mass: 1e12, speed, rear, rearEnd: null, front });
  const strengths: number[] = [];
  let arrived = 0;
  for (; run.endPressure < 1.01 * STILL_AIR.pressure; stepRun(run, 1)) {
    strengths.push(run.passage.frontPressure / STILL_AIR.pressure);
    arrived = run.time;
  }
  // Past the shock's width, before the echo can have come back from the ball.
  const settled = 1.1 * arrived;
  while (run.time < settled) stepRun(run, 1);
  return {
    strength: strengths.at(-1) as number,
    mach: 1 / arrived / sound,
    echo: run.endPressure / STILL_AIR.pressure,
  };
}
