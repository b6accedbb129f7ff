import { atWall } from '../../../src/launch/boundary';
import {
  advance,
  type Column,
  createColumn,
  type EndFlux,
  longestStep,
  predict,
  stateAtEnd,
} from '../../../src/launch/column';
import { cellMean, GAMMA, type Primitive } from './exact';

const GAS = { gamma: GAMMA, constant: 1 };
const COURANT = 0.8;

/** A moving wall at the right: its place and speed at a time. */
export interface Wall {
  place(t: number): number;
  speed(t: number): number;
}

/**
 * The program's column of gas from `left` to `right` run to a time, from states that stay as they are at the ends, or
 * with a wall at the right.
 */
export function runTube(
  cells: number,
  left: number,
  right: number,
  at: (x: number) => Primitive,
  time: number,
  wall: Wall | null = null,
): Column {
  const width = (right - left) / cells;
  const column = createColumn(GAS, cells, left, right, (x) => {
    // Means of what is conserved: those of density, velocity and pressure differ from them to second order.
    const mean = (f: (state: Primitive) => number) => cellMean((z) => f(at(z)), x, width);
    const density = mean(({ rho }) => rho);
    const velocity = mean(({ rho, u }) => rho * u) / density;
    const total = mean(({ rho, u, p }) => p / (GAMMA - 1) + 0.5 * rho * u * u);
    return { density, velocity, pressure: (GAMMA - 1) * (total - 0.5 * density * velocity ** 2) };
  });
  const leftFlux = outerFlux(at(left));
  const rightFlux = outerFlux(at(right));
  for (let t = 0; t < time; ) {
    const dt = Math.min(time - t, longestStep(column, 0, wall?.speed(t) ?? 0, COURANT));
    if (wall === null) {
      predict(column, dt, 0, 0);
      advance(column, dt, leftFlux, rightFlux);
    } else {
      const speed = (wall.place(t + dt) - wall.place(t)) / dt;
      predict(column, dt, 0, speed);
      const state = stateAtEnd(column, 'right');
      const { pressure } = atWall(GAS, { ...state, inward: -state.velocity }, -speed);
      const push = { mass: 0, momentum: pressure, energy: pressure * speed, speed };
      advance(column, dt, leftFlux, push);
    }
    t += dt;
  }
  return column;
}

const outerFlux = ({ rho, u, p }: Primitive): EndFlux => ({
  ...{ speed: 0, mass: rho * u, momentum: rho * u * u + p },
  energy: u * ((GAMMA / (GAMMA - 1)) * p + 0.5 * rho * u * u),
});

/** Mean over the column of the error of the density against the exact one. */
export function densityError(column: Column, exact: (x: number) => Primitive): number {
  const { cells, left, right, state } = column;
  const width = (right - left) / cells;
  let sum = 0;
  for (let i = 0; i < cells; i++) {
    const true_ = cellMean((x) => exact(x).rho, left + (i + 0.5) * width, width);
    sum += Math.abs((state.density[i] as number) - true_);
  }
  return sum / cells;
}
