import { inverseGram, leastSquares, triangulate } from '../../core/linalg';
import type { FittedCamera, TargetView } from '../opencv/camera';
import { cameraParameters, project } from './project';

/** Focal length, centre x and y, k1, k2. */
const LENS = 5;
const POSE = 6;

/** Standard uncertainties and the correlation of k1 and k2. */
export interface LensScatter {
  readonly focal: number;
  readonly centre: readonly [number, number];
  readonly k1: number;
  readonly k2: number;
  readonly correlation: number;
}

/** From this many views on, how they disagree is asked as well as how the corners scatter. */
const FEWEST_TO_LEAVE_OUT = 6;

/**
 * What the lens is known to. Once from the corners' scatter, every view's pose counted as unknown; once from how the
 * lens changes when views are left out one by one (jackknife), because a bent board or a third radial term move all
 * corners of a view alike; the larger of the two. Null where the views leave the lens open.
 */
export function lensScatter(
  camera: FittedCamera,
  views: readonly TargetView[],
): LensScatter | null {
  const equations: ViewEquations[] = [];
  for (const [v, view] of views.entries()) {
    equations.push(equationsOf(view, cameraParameters(camera, v)));
  }
  const plain = cornerCovariance(equations);
  if (plain === null) return null;
  const jackknife = equations.length >= FEWEST_TO_LEAVE_OUT ? leftOutCovariance(equations) : plain;
  const u = (i: number): number =>
    Math.sqrt(Math.max(plain[i]?.[i] as number, jackknife[i]?.[i] as number));
  const wider = (jackknife[3]?.[3] as number) > (plain[3]?.[3] as number) ? jackknife : plain;
  const [k1k1, k1k2, k2k2] = [wider[3]?.[3], wider[3]?.[4], wider[4]?.[4]] as [
    number,
    number,
    number,
  ];
  return {
    focal: u(0),
    centre: [u(1), u(2)],
    k1: u(3),
    k2: u(4),
    correlation: Math.max(-1, Math.min(1, k1k2 / Math.sqrt(k1k1 * k2k2))),
  };
}

/** What one view says of the lens, its pose taken out: triangular rows, right-hand sides; sum of squares, number. */
interface ViewEquations {
  readonly rows: readonly (readonly number[])[];
  readonly rhs: readonly number[];
  readonly squares: number;
  readonly observations: number;
}

function equationsOf(view: TargetView, parameters: readonly number[]): ViewEquations {
  const n = 2 * view.target.length;
  const base = project(view, parameters);
  const residuals = Float64Array.from(base, (value, i) => {
    const [x, y] = view.image[i >> 1] as readonly [number, number];
    return (i % 2 === 0 ? x : y) - value;
  });
  const squares = residuals.reduce((sum, residual) => sum + residual * residual, 0);
  const columns = derivatives(view, parameters);
  triangulate(columns, n, POSE + LENS, residuals);
  const below = Array.from({ length: LENS }, (_, k) => POSE + k);
  return {
    rows: below.map((row) =>
      below.map((column) => (column < row ? 0 : (columns[column * n + row] as number))),
    ),
    rhs: below.map((row) => residuals[row] as number),
    squares,
    observations: n,
  };
}

function cornerCovariance(equations: readonly ViewEquations[]): number[][] | null {
  const stacked = equations.flatMap(({ rows }) => rows);
  const n = stacked.length;
  const columns = new Float64Array(n * LENS);
  stacked.forEach((values, i) => {
    values.forEach((value, j) => {
      columns[j * n + i] = value;
    });
  });
  triangulate(columns, n, LENS, new Float64Array(n));
  for (let j = 0; j < LENS; j++) if (columns[j * n + j] === 0) return null;
  const squares = equations.reduce((sum, view) => sum + view.squares, 0);
  const observations = equations.reduce((sum, view) => sum + view.observations, 0);
  const variance = squares / (observations - LENS - POSE * equations.length);
  if (!(variance >= 0)) return null;
  const gram = inverseGram(columns, n, LENS);
  return Array.from({ length: LENS }, (_, a) =>
    Array.from({ length: LENS }, (_unused, b) => variance * (gram[a * LENS + b] as number)),
  );
}

function leftOutCovariance(equations: readonly ViewEquations[]): number[][] {
  const moves = equations.map((_, v) => {
    const others = equations.filter((_unused, w) => w !== v);
    return leastSquares(
      others.flatMap(({ rows }) => rows),
      others.flatMap(({ rhs }) => rhs),
    );
  });
  const share = (equations.length - 1) / equations.length;
  return Array.from({ length: LENS }, (_, a) =>
    Array.from(
      { length: LENS },
      (_unused, b) =>
        share * moves.reduce((sum, move) => sum + (move[a] as number) * (move[b] as number), 0),
    ),
  );
}

/** By central differences: accurate far beyond what a standard uncertainty is asked for. */
function derivatives(view: TargetView, parameters: readonly number[]): Float64Array {
  const n = 2 * view.target.length;
  const columns = new Float64Array(n * parameters.length);
  for (let j = 0; j < parameters.length; j++) {
    const step = 1e-6 * Math.max(1, Math.abs(parameters[j] as number));
    const moved = (by: number) => project(view, parameters.with(j, (parameters[j] as number) + by));
    const up = moved(step);
    const down = moved(-step);
    for (let i = 0; i < n; i++) {
      columns[j * n + i] = ((up[i] as number) - (down[i] as number)) / (2 * step);
    }
  }
  return columns;
}
