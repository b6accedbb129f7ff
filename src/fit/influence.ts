/** How observations determine the parameters of a fit, linear about its result. */
export interface Design {
  readonly rows: number;
  readonly columns: number;
  /** Derivatives of the observations by the parameters over their standard uncertainties, column after column. */
  readonly whitened: Float64Array;
  /** Of the parameters, columns x columns. */
  readonly covariance: Float64Array;
}

/** Change of parameter `index` per standard uncertainty of observation `row`. */
function gainOf({ rows, columns, whitened, covariance }: Design, index: number, row: number) {
  let sum = 0;
  for (let k = 0; k < columns; k++) {
    sum += (covariance[index * columns + k] as number) * (whitened[k * rows + row] as number);
  }
  return sum;
}

/** Share of an observation in its own fitted value, 0..1: the diagonal of the hat matrix. */
export function leverage(design: Design, row: number): number {
  let sum = 0;
  for (let j = 0; j < design.columns; j++) {
    sum += (design.whitened[j * design.rows + row] as number) * gainOf(design, j, row);
  }
  return sum;
}

/**
 * What leaving one observation out would change parameter `index` by, and the standard uncertainty of that change
 * (Belsley, Kuh and Welsch, Regression Diagnostics (1980), 2.1; exact for a linear fit). `residual`: its residual over its
 * standard uncertainty. Leverage 1 leaves no way to tell.
 */
export function changeWithout(
  design: Design,
  row: number,
  residual: number,
  index: number,
): { readonly change: number; readonly u: number } {
  const free = 1 - leverage(design, row);
  const gain = gainOf(design, index, row);
  return { change: (-gain * residual) / free, u: Math.abs(gain) / Math.sqrt(free) };
}

/** A direction that the fit follows to all but this share has nothing left to show in the residuals. */
const ABSORBED = 1e-6;

/**
 * Score test: whether the fit would gain by terms it does not have, each given by what it adds to the observations over
 * their standard uncertainties (`terms`; rows beyond a term's length: nothing). Chi-square with as many degrees of freedom
 * as terms that the fit does not follow by itself. `residuals` over standard uncertainties, of a fit at its minimum.
 */
export function scoreTest(
  { rows, columns, whitened, covariance }: Design,
  residuals: Float64Array,
  terms: readonly Float64Array[],
): { readonly chiSquare: number; readonly dof: number } {
  const kept: Float64Array[] = [];
  let chiSquare = 0;
  for (const term of terms) {
    const rest = new Float64Array(rows);
    rest.set(term);
    const size = dot(rest, rest);
    // What the parameters, then the terms before, can follow of it.
    const seen = Array.from({ length: columns }, (_, j) =>
      dot(term, whitened.subarray(j * rows, (j + 1) * rows)),
    );
    for (let j = 0; j < columns; j++) {
      let share = 0;
      for (let k = 0; k < columns; k++) {
        share += (covariance[j * columns + k] as number) * (seen[k] as number);
      }
      for (let i = 0; i < rows; i++) {
        rest[i] = (rest[i] as number) - share * (whitened[j * rows + i] as number);
      }
    }
    for (const before of kept) {
      const share = dot(rest, before);
      for (let i = 0; i < rows; i++) rest[i] = (rest[i] as number) - share * (before[i] as number);
    }
    const left = dot(rest, rest);
    if (!(left > ABSORBED * size)) continue;
    const unit = rest.map((value) => value / Math.sqrt(left));
    kept.push(unit);
    chiSquare += dot(residuals, unit) ** 2;
  }
  return { chiSquare, dof: kept.length };
}

/** Over as many as the shorter has. */
function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    sum += (a[i] as number) * (b[i] as number);
  }
  return sum;
}
