import type { ClassReport, ReportRow, ValidationClass } from '../types';
import {
  behindPiston,
  type Primitive,
  pistonPlace,
  pistonSpeed,
  pulseAt,
  riemann,
  starOf,
} from './exact';
import { figureRow } from './rows';
import { densityError, runTube } from './tube';

const state = (rho: number, u: number, p: number): Primitive => ({ rho, u, p });

interface RiemannTest {
  readonly name: string;
  readonly left: Primitive;
  readonly right: Primitive;
  /** Where the states meet, and when the solution is looked at. */
  readonly x: number;
  readonly t: number;
}

/** Toro, Riemann Solvers, 3rd ed. 2009, tables 4.1 and 10.1; the first is Sod's (J. Comput. Phys. 27 (1978) 1). */
const RIEMANN: readonly RiemannTest[] = [
  { name: 'Sod', left: state(1, 0, 1), right: state(0.125, 0, 0.1), x: 0.5, t: 0.2 },
  {
    name: 'Toro 2, near vacuum',
    left: state(1, -2, 0.4),
    right: state(1, 2, 0.4),
    x: 0.5,
    t: 0.15,
  },
  { name: 'Toro 3', left: state(1, 0, 1000), right: state(1, 0, 0.01), x: 0.5, t: 0.012 },
  { name: 'Toro 4', left: state(1, 0, 0.01), right: state(1, 0, 100), x: 0.5, t: 0.035 },
  {
    ...{ name: 'Toro 5', x: 0.4, t: 0.035 },
    left: state(5.99924, 19.5975, 460.894),
    right: state(5.99242, -6.19633, 46.095),
  },
];
const SMOOTH = ['smooth pulse', 'withdrawn piston'] as const;
const CELLS = [100, 200, 400, 800, 1600];

/** Errors of density by number of cells; of the finest mesh also those of p and u between the waves. */
interface Case {
  readonly name: string;
  readonly errors: readonly number[];
  readonly star: { readonly pressure: number; readonly velocity: number } | null;
}

/** Least order over all meshes. */
const LEAST_ORDER: Readonly<Record<string, number>> = {
  Sod: 0.8,
  'smooth pulse': 1.8,
  'withdrawn piston': 1.8,
};
/** Error between the waves, per cent of the largest pressure, and of the largest velocity or sound speed. */
const MOST_STAR = 0.5;

/** The solver against exact solutions. */
export const convergence: ValidationClass<Case> = {
  name: 'convergence',
  chunks: RIEMANN.length + SMOOTH.length,
  async run(chunk) {
    const test = RIEMANN[chunk];
    return test ? shockTube(test) : smooth(SMOOTH[chunk - RIEMANN.length] as string);
  },
  conclude(records): ClassReport {
    return {
      rows: records.flatMap((one) => [...orderRows(one), ...starRows(one)]),
      plots: [
        {
          ...{ file: 'convergence', title: 'Error of density against cells', limits: [] },
          x: { label: 'cells', log: true },
          y: { label: 'mean error of density', log: true },
          series: records.map(({ name, errors }) => ({
            name,
            points: errors.map((y, i) => ({ x: CELLS[i] as number, y })),
          })),
        },
      ],
      text: `The column of gas of the model between fixed ends, or with a withdrawn piston at one, against exact solutions: mean error of density over the column (L1), means over cells compared with means over cells. The order is the slope of the error over all meshes, fitted in logarithms. A shock and a contact cost any scheme of this kind its order: 1 and about 2/3 are what is possible there. Pressure and velocity between the waves, where they are uniform, on ${CELLS.at(-1)} cells: medians of the middle half of that stretch, per cent of the largest pressure and of the largest velocity or speed of sound. Near a vacuum (Toro 2) density converges slowly, as it does for this family of schemes.`,
    };
  },
};

function shockTube({ name, left, right, x: x0, t }: RiemannTest): Case {
  const at = (x: number) => (x < x0 ? left : right);
  const exact = (x: number) => riemann(left, right, (x - x0) / t);
  const columns = CELLS.map((cells) => runTube(cells, 0, 1, at, t));
  const star = starOf(left, right);
  // Between the waves by the exact solution.
  const finest = columns.at(-1) as (typeof columns)[number];
  const inside = Array.from({ length: finest.cells }, (_, i) => i).filter((i) => {
    const { p } = exact((i + 0.5) / finest.cells);
    return Math.abs(p / star.p - 1) < 1e-9;
  });
  const middle = inside.slice(inside.length / 4, (3 * inside.length) / 4);
  const median = (values: Float64Array) =>
    middle.map((i) => values[i] as number).sort((a, b) => a - b)[middle.length >> 1] as number;
  const speeds = [left, right].flatMap(({ rho, u, p }) => [
    Math.abs(u),
    Math.sqrt((1.4 * p) / rho),
  ]);
  const largestPressure = Math.max(left.p, right.p, star.p);
  return {
    name,
    errors: columns.map((column) => densityError(column, exact)),
    star: {
      pressure: (100 * Math.abs(median(finest.state.pressure) - star.p)) / largestPressure,
      velocity:
        (100 * Math.abs(median(finest.state.velocity) - star.u)) / Math.max(...speeds, star.u),
    },
  };
}

function smooth(name: string): Case {
  const pulse = (cells: number) => {
    const column = runTube(cells, 0, 1, (x) => pulseAt(x, 0), 0.3);
    return densityError(column, (x) => pulseAt(x, 0.3));
  };
  const piston = (cells: number) => {
    const wall = { place: pistonPlace, speed: pistonSpeed };
    const column = runTube(cells, -1.25, 0, (x) => behindPiston(x, 0), 1, wall);
    return densityError(column, (x) => behindPiston(x, 1));
  };
  return { name, errors: CELLS.map(name === SMOOTH[0] ? pulse : piston), star: null };
}

function orderRows({ name, errors }: Case): ReportRow[] {
  const low = LEAST_ORDER[name];
  return [
    ...errors.map((error, i) =>
      figureRow(name, 'L1 error of density', error, {}, CELLS[i] as number),
    ),
    figureRow(name, 'order', orderOf(errors), low === undefined ? {} : { low }, CELLS.length),
  ];
}

/** Slope of the errors against cells in logarithms, least squares. */
function orderOf(errors: readonly number[]): number {
  const x = CELLS.map((cells) => -Math.log(cells));
  const y = errors.map(Math.log);
  const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
  const [mx, my] = [mean(x), mean(y)];
  const up = x.reduce((sum, value, i) => sum + (value - mx) * ((y[i] as number) - my), 0);
  return up / x.reduce((sum, value) => sum + (value - mx) ** 2, 0);
}

const starRows = ({ name, star }: Case): ReportRow[] => {
  const n = CELLS.at(-1) as number;
  return star === null
    ? []
    : [
        figureRow(name, 'error of p*, %', star.pressure, { high: MOST_STAR }, n),
        figureRow(name, 'error of u*, %', star.velocity, { high: MOST_STAR }, n),
      ];
};
