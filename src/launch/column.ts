/**
 * A column of gas between two ends that may move, by the Euler equations in one dimension.
 *
 * Finite volumes on a mesh stretched evenly between the ends, second order in space and time: MUSCL-Hancock (van Leer,
 * J. Comput. Phys. 32 (1979) 101; Toro, Riemann Solvers, 3rd ed. 2009, ch. 14.4) with HLLC fluxes, in the frame of each
 * moving face. Mass, momentum and energy of a cell change only by what passes its faces, so the column conserves them
 * to rounding whatever the ends do.
 */
import { ExitframeError } from '../core/reason';
import type { Gas, GasState } from './gas';
import { type Flux, hllc } from './hllc';

export interface Column {
  readonly gas: Gas;
  readonly cells: number;
  /** Ends, m. */
  left: number;
  right: number;
  /** Of each cell, per volume: mass kg/m^3, momentum kg/(s m^2), energy J/m^3. */
  readonly mass: Float64Array;
  readonly momentum: Float64Array;
  readonly energy: Float64Array;
  /** Of each cell: density kg/m^3, velocity m/s, pressure Pa; of the time `refresh` was called at. */
  readonly state: Fields;
  /** The same on both sides of each face in the middle of the step, by `predict`. Side `low` of face i is cell i - 1. */
  readonly low: Fields;
  readonly high: Fields;
  readonly flux: Flux;
}

interface Fields {
  readonly density: Float64Array;
  readonly velocity: Float64Array;
  readonly pressure: Float64Array;
}

const fields = (length: number): Fields => ({
  density: new Float64Array(length),
  velocity: new Float64Array(length),
  pressure: new Float64Array(length),
});

/** A column of `cells` cells from `left` to `right`, m; `at` gives the state at a cell's middle. */
export function createColumn(
  gas: Gas,
  cells: number,
  left: number,
  right: number,
  at: (x: number) => GasState,
): Column {
  const column: Column = {
    ...{ gas, cells, left, right },
    mass: new Float64Array(cells),
    momentum: new Float64Array(cells),
    energy: new Float64Array(cells),
    state: fields(cells),
    low: fields(cells + 1),
    high: fields(cells + 1),
    flux: { mass: 0, momentum: 0, energy: 0 },
  };
  for (let i = 0; i < cells; i++) {
    const { density, velocity, pressure } = at(left + ((i + 0.5) * (right - left)) / cells);
    column.mass[i] = density;
    column.momentum[i] = density * velocity;
    column.energy[i] = pressure / (gas.gamma - 1) + 0.5 * density * velocity ** 2;
  }
  refresh(column);
  return column;
}

/** The same gas in twice as many cells: each is halved along its limited slope, so nothing is gained or lost. */
export function refined(column: Column): Column {
  const { gas, cells, left, right } = column;
  const still = { density: 1, velocity: 0, pressure: 1 };
  const fine = createColumn(gas, 2 * cells, left, right, () => still);
  for (const key of ['mass', 'momentum', 'energy'] as const) {
    for (let i = 0; i < cells; i++) {
      const value = column[key][i] as number;
      const quarter = slope(column[key], cells, i) / 4;
      fine[key][2 * i] = value - quarter;
      fine[key][2 * i + 1] = value + quarter;
    }
  }
  refresh(fine);
  return fine;
}

/** Works out density, velocity and pressure from what is conserved. */
function refresh({ gas, cells, mass, momentum, energy, state }: Column): void {
  const { density, velocity, pressure } = state;
  for (let i = 0; i < cells; i++) {
    const rho = mass[i] as number;
    const u = (momentum[i] as number) / rho;
    const p = (gas.gamma - 1) * ((energy[i] as number) - 0.5 * rho * u * u);
    if (!(rho > 0 && p > 0)) {
      throw new ExitframeError(
        'gasStateLost',
        `The gas dynamics lost the state of the gas in cell ${i + 1} of ${cells}: a vacuum formed there.`,
        'Look at the launcher: pressures, masses and lengths must be those of a real one.',
        { values: { cell: i + 1, cells } },
      );
    }
    density[i] = rho;
    velocity[i] = u;
    pressure[i] = p;
  }
}

/** The longest step in which no wave crosses more than `courant` of a cell, s; the ends move at these speeds, m/s. */
export function longestStep(
  { gas, cells, left, right, state }: Column,
  leftSpeed: number,
  rightSpeed: number,
  courant: number,
): number {
  let fastest = 0;
  for (let i = 0; i < cells; i++) {
    const c = Math.sqrt((gas.gamma * (state.pressure[i] as number)) / (state.density[i] as number));
    const mesh = leftSpeed + ((rightSpeed - leftSpeed) * (i + 0.5)) / cells;
    fastest = Math.max(fastest, Math.abs((state.velocity[i] as number) - mesh) + c);
  }
  return (courant * (right - left)) / cells / fastest;
}

/** Limited slope: van Leer's harmonic mean, nothing at an extremum. */
const limited = (a: number, b: number): number => (a * b > 0 ? (2 * a * b) / (a + b) : 0);

/**
 * The states at both sides of all faces in the middle of a step of `dt`, s. Cells at the ends take their slope from
 * inside, so that nothing is assumed of what lies beyond.
 */
export function predict(column: Column, dt: number, leftSpeed: number, rightSpeed: number): void {
  const { gas, cells, left, right, state, low, high } = column;
  const { density, velocity, pressure } = state;
  const share = dt / ((right - left) / cells);
  for (let i = 0; i < cells; i++) {
    const rho = density[i] as number;
    const u = velocity[i] as number;
    const p = pressure[i] as number;
    let dRho = slope(density, cells, i);
    let dU = slope(velocity, cells, i);
    let dP = slope(pressure, cells, i);
    const wLow = leftSpeed + ((rightSpeed - leftSpeed) * i) / cells;
    const wHigh = leftSpeed + ((rightSpeed - leftSpeed) * (i + 1)) / cells;
    // Half a step of the primitive equations, followed along each face's own way.
    const changeRho = 0.5 * share * rho * dU;
    const changeU = (0.5 * share * dP) / rho;
    const changeP = 0.5 * share * gas.gamma * p * dU;
    const lowShift = -0.5 - 0.5 * share * (u - wLow);
    const highShift = 0.5 - 0.5 * share * (u - wHigh);
    const empty =
      rho + Math.min(lowShift * dRho, highShift * dRho) - changeRho <= 0 ||
      p + Math.min(lowShift * dP, highShift * dP) - changeP <= 0;
    // Where the slopes would leave a vacuum at a face the cell is taken as uniform.
    if (empty) dRho = dU = dP = 0;
    const on = empty ? 0 : 1;
    high.density[i] = rho + lowShift * dRho - on * changeRho;
    high.velocity[i] = u + lowShift * dU - on * changeU;
    high.pressure[i] = p + lowShift * dP - on * changeP;
    low.density[i + 1] = rho + highShift * dRho - on * changeRho;
    low.velocity[i + 1] = u + highShift * dU - on * changeU;
    low.pressure[i + 1] = p + highShift * dP - on * changeP;
  }
}

/** The change over cell `i` of `cells`; at an end the lesser of the next two differences inside, if they agree in sign. */
function slope(values: Float64Array, cells: number, i: number): number {
  if (i > 0 && i < cells - 1) return limited(step(values, i - 1), step(values, i));
  const near = step(values, i === 0 ? 0 : i - 1);
  const next = step(values, i === 0 ? 1 : i - 2);
  if (near * next <= 0) return 0;
  return Math.abs(near) < Math.abs(next) ? near : next;
}

const step = (values: Float64Array, i: number): number =>
  (values[i + 1] as number) - (values[i] as number);

/** The state of the gas at an end in the middle of the step, as predicted. */
export function stateAtEnd({ cells, low, high }: Column, end: 'left' | 'right'): GasState {
  const [side, i] = end === 'left' ? [high, 0] : [low, cells];
  return {
    density: side.density[i] as number,
    velocity: side.velocity[i] as number,
    pressure: side.pressure[i] as number,
  };
}

/** What passes an end during a step, per area and time in the direction of x, and the end's speed, m/s. */
export interface EndFlux extends Flux {
  readonly speed: number;
}

/** Ends the step: moves the mesh and adds what passed the faces. Call `predict` before. */
export function advance(column: Column, dt: number, atLeft: EndFlux, atRight: EndFlux): void {
  const { gas, cells, mass, momentum, energy, low, high, flux } = column;
  const before = (column.right - column.left) / cells;
  column.left += atLeft.speed * dt;
  column.right += atRight.speed * dt;
  const after = (column.right - column.left) / cells;
  const grown = before / after;
  const gained = dt / after;
  let inMass = atLeft.mass;
  let inMomentum = atLeft.momentum;
  let inEnergy = atLeft.energy;
  for (let i = 0; i < cells; i++) {
    if (i === cells - 1) {
      flux.mass = atRight.mass;
      flux.momentum = atRight.momentum;
      flux.energy = atRight.energy;
    } else {
      const k = i + 1;
      hllc(
        gas,
        low.density[k] as number,
        low.velocity[k] as number,
        low.pressure[k] as number,
        high.density[k] as number,
        high.velocity[k] as number,
        high.pressure[k] as number,
        atLeft.speed + ((atRight.speed - atLeft.speed) * k) / cells,
        flux,
      );
    }
    mass[i] = (mass[i] as number) * grown + gained * (inMass - flux.mass);
    momentum[i] = (momentum[i] as number) * grown + gained * (inMomentum - flux.momentum);
    energy[i] = (energy[i] as number) * grown + gained * (inEnergy - flux.energy);
    inMass = flux.mass;
    inMomentum = flux.momentum;
    inEnergy = flux.energy;
  }
  refresh(column);
}

/**
 * Friction of the barrel's wall during `dt`: a shear of f / 8 times density times velocity squared (Darcy). It takes
 * momentum and leaves the energy in the gas (walls that take no heat: Fanno flow).
 */
export function rubOnWall(column: Column, dt: number, darcy: number, bore: number): void {
  const { cells, mass, momentum } = column;
  for (let i = 0; i < cells; i++) {
    const u = (momentum[i] as number) / (mass[i] as number);
    momentum[i] = (momentum[i] as number) / (1 + (darcy * Math.abs(u) * dt) / (2 * bore));
  }
  refresh(column);
}

/** Mass, kg/m^2, and energy, J/m^2, of the whole column per area. */
export function contents({ cells, left, right, mass, energy }: Column): {
  mass: number;
  energy: number;
} {
  const width = (right - left) / cells;
  let total = { mass: 0, energy: 0 };
  for (let i = 0; i < cells; i++) {
    total = {
      mass: total.mass + width * (mass[i] as number),
      energy: total.energy + width * (energy[i] as number),
    };
  }
  return total;
}
