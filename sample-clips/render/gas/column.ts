import type { EndState } from './ends';

/**
 * A column of gas on an even mesh between two ends that move, by the Euler equations in one dimension: central fluxes
 * of Rusanov on linear slopes (van Leer's limiter), two stages of Heun. Contents are kept a cell: kg/m^2, kg/(m s),
 * J/m^2.
 */
export interface Column {
  readonly gamma: number;
  readonly cells: number;
  /** Ends, m. */
  readonly from: number;
  readonly to: number;
  readonly content: Contents;
}

type Contents = readonly [mass: Float64Array, momentum: Float64Array, energy: Float64Array];

/** What passes an end in the direction of the barrel, per area and second, and the end's speed, m/s. */
export interface Through {
  readonly mass: number;
  readonly momentum: number;
  readonly energy: number;
  readonly speed: number;
}

/** Gas of density, velocity along the barrel and pressure alike throughout. */
export function evenColumn(
  gamma: number,
  cells: number,
  [from, to]: readonly [number, number],
  { rho, u, p }: EndState,
): Column {
  const width = (to - from) / cells;
  const fill = (value: number) => new Float64Array(cells).fill(width * value);
  const energy = p / (gamma - 1) + 0.5 * rho * u ** 2;
  return { gamma, cells, from, to, content: [fill(rho), fill(rho * u), fill(energy)] };
}

/** Density, velocity and pressure of each cell. */
function fieldsOf({ gamma, cells, from, to, content }: Column): Contents {
  const width = (to - from) / cells;
  const [mass, momentum, energy] = content;
  const u = momentum.map((m, i) => m / (mass[i] as number));
  const rho = mass.map((m) => m / width);
  const p = energy.map(
    (e, i) => (gamma - 1) * (e / width - 0.5 * (rho[i] as number) * (u[i] as number) ** 2),
  );
  return [rho, u, p];
}

/** Half the change over each cell; an end cell takes the next two differences inside. */
function halfSlopes(f: Float64Array): Float64Array {
  const last = f.length - 1;
  const step = (i: number) => (f[i + 1] as number) - (f[i] as number);
  return f.map((_, i) => {
    const j = Math.min(Math.max(i, 1), last - 1);
    const [a, b] = [step(j - 1), step(j)];
    return a * b > 0 ? (a * b) / (a + b) : 0;
  });
}

/** State at an end, density kg/m^3, velocity along the barrel m/s, pressure Pa. */
export function endOf(column: Column, end: 'from' | 'to'): EndState {
  const inner = end === 'from' ? [0, 1, 2] : [1, 2, 3].map((k) => column.cells - k);
  const [near, next, third] = inner.map((i) => cellOf(column, i)) as [EndState, EndState, EndState];
  const at = (key: keyof EndState) => {
    const [a, b] = [near[key] - next[key], next[key] - third[key]];
    return a * b > 0 ? near[key] + (a * b) / (a + b) : near[key];
  };
  const state = { rho: at('rho'), u: at('u'), p: at('p') };
  // Next to a shock the slope would leave less than nothing.
  return state.rho > 0 && state.p > 0 ? state : near;
}

function cellOf({ gamma, cells, from, to, content }: Column, i: number): EndState {
  const width = (to - from) / cells;
  const [mass, momentum, energy] = content.map((values) => values[i] as number) as [
    number,
    number,
    number,
  ];
  const rho = mass / width;
  const u = momentum / mass;
  return { rho, u, p: (gamma - 1) * (energy / width - 0.5 * rho * u ** 2) };
}

/** Longest step that waves allow, s. */
export function longestStep(column: Column, speeds: readonly [number, number]): number {
  const [rho, u, p] = fieldsOf(column);
  const edge = Math.max(...speeds.map(Math.abs));
  let fastest = 0;
  for (let i = 0; i < column.cells; i++) {
    const c = Math.sqrt((column.gamma * (p[i] as number)) / (rho[i] as number));
    fastest = Math.max(fastest, Math.abs(u[i] as number) + c + edge);
  }
  return (0.4 * (column.to - column.from)) / column.cells / fastest;
}

/** Change of the contents per second; Darcy's `friction` on a bore, m, takes momentum and leaves the energy. */
export function changeOf(
  column: Column,
  atFrom: Through,
  atTo: Through,
  friction: number,
  bore: number,
): Contents {
  const { gamma, cells } = column;
  const fields = fieldsOf(column);
  const [dRho, dU, dP] = fields.map(halfSlopes) as unknown as Contents;
  const [rho, u, p] = fields;
  const out: Contents = [new Float64Array(cells), new Float64Array(cells), new Float64Array(cells)];
  const add = (i: number, sign: number, mass: number, momentum: number, energy: number) => {
    out[0][i] = (out[0][i] as number) + sign * mass;
    out[1][i] = (out[1][i] as number) + sign * momentum;
    out[2][i] = (out[2][i] as number) + sign * energy;
  };
  add(0, 1, atFrom.mass, atFrom.momentum, atFrom.energy);
  add(cells - 1, -1, atTo.mass, atTo.momentum, atTo.energy);
  for (let j = 1; j < cells; j++) {
    const w = atFrom.speed + ((atTo.speed - atFrom.speed) * j) / cells;
    const [a, b] = [j - 1, j];
    const rhoA = (rho[a] as number) + (dRho[a] as number);
    const uA = (u[a] as number) + (dU[a] as number);
    const pA = (p[a] as number) + (dP[a] as number);
    const rhoB = (rho[b] as number) - (dRho[b] as number);
    const uB = (u[b] as number) - (dU[b] as number);
    const pB = (p[b] as number) - (dP[b] as number);
    const eA = pA / (gamma - 1) + 0.5 * rhoA * uA * uA;
    const eB = pB / (gamma - 1) + 0.5 * rhoB * uB * uB;
    const fastest = Math.max(
      Math.abs(uA - w) + Math.sqrt((gamma * pA) / rhoA),
      Math.abs(uB - w) + Math.sqrt((gamma * pB) / rhoB),
    );
    const mass = (uA - w) * rhoA + (uB - w) * rhoB - fastest * (rhoB - rhoA);
    const momentum =
      (uA - w) * rhoA * uA + pA + (uB - w) * rhoB * uB + pB - fastest * (rhoB * uB - rhoA * uA);
    const energy = (uA - w) * eA + pA * uA + (uB - w) * eB + pB * uB - fastest * (eB - eA);
    add(a, -0.5, mass, momentum, energy);
    add(b, 0.5, mass, momentum, energy);
  }
  for (let i = 0; i < cells; i++) {
    const drag = (friction / (2 * bore)) * Math.abs(u[i] as number);
    out[1][i] = (out[1][i] as number) - drag * (column.content[1][i] as number);
  }
  return out;
}

/** The column with its contents changed and its ends moved during `dt`. */
export function moved(
  column: Column,
  change: Contents,
  dt: number,
  [fromSpeed, toSpeed]: readonly [number, number],
): Column {
  const content = column.content.map((values, k) => {
    const rates = change[k] as Float64Array;
    return values.map((v, i) => v + dt * (rates[i] as number));
  }) as unknown as Contents;
  return { ...column, from: column.from + fromSpeed * dt, to: column.to + toSpeed * dt, content };
}

/** Halfway between two columns. */
export function halfway(a: Column, b: Column): Column {
  const content = a.content.map((values, k) => {
    const other = b.content[k] as Float64Array;
    return values.map((v, i) => 0.5 * (v + (other[i] as number)));
  }) as unknown as Contents;
  return { ...a, from: 0.5 * (a.from + b.from), to: 0.5 * (a.to + b.to), content };
}
