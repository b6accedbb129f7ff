import { definiteInverse } from '../core/linalg';
import { ExitframeError } from '../core/reason';
import { chiSquareCdf } from '../core/statistics';
import type { BetweenShots, Consistency, ScatterVerdict, SeriesShot } from './types';

/** Scatter is called too large, or too small, where chance would make it so less often than this. */
const SIGNIFICANCE = 0.05;

/** Effects of the inputs that shots share, one column an input: an error common to those that have it. */
export function sharedColumns(shots: readonly SeriesShot[]): {
  readonly source: string;
  readonly dof: number | null;
  readonly effects: readonly number[];
}[] {
  const columns = new Map<string, { source: string; dof: number | null; effects: number[] }>();
  shots.forEach(({ shared }, i) => {
    for (const { key, source, effect, dof } of shared) {
      const column = columns.get(key) ?? { source, dof, effects: shots.map(() => 0) };
      column.effects[i] = (column.effects[i] as number) + effect;
      columns.set(key, column);
    }
  });
  return [...columns.values()];
}

/**
 * The shots about their best mean under their full covariance, diag(u^2 + tau^2) + E E' with E the shared columns.
 * An error common to all of them alike drops out; one that only some share does not.
 * By the formula of Woodbury, so that only as many equations are solved as there are shared inputs.
 */
function deviationsAt(
  values: readonly number[],
  own: readonly number[],
  columns: readonly (readonly number[])[],
  tau2: number,
) {
  const weights = own.map((u) => 1 / (u * u + tau2));
  const dot = (a: readonly number[], b: readonly number[]) =>
    weights.reduce((sum, w, i) => sum + w * (a[i] as number) * (b[i] as number), 0);
  const k = columns.length;
  const gram = Float64Array.from(
    columns.flatMap((a, r) => columns.map((b, c) => (r === c ? 1 : 0) + dot(a, b))),
  );
  const inner = k === 0 ? gram : definiteInverse(gram, k);
  if (inner === null) {
    throw new ExitframeError('singular', 'The shots have no covariance to weigh by.');
  }
  const onto = (a: readonly number[]) => columns.map((column) => dot(column, a));
  /** What the shared columns take off a' C^-1 b, given both sides' products with them. */
  const less = (a: readonly number[], b: readonly number[]): number => {
    let sum = 0;
    for (let r = 0; r < k; r++) {
      for (let c = 0; c < k; c++) {
        sum += (a[r] as number) * (inner[r * k + c] as number) * (b[c] as number);
      }
    }
    return sum;
  };
  const product = (a: readonly number[], b: readonly number[]): number =>
    dot(a, b) - less(onto(a), onto(b));
  const ones = values.map(() => 1);
  const total = product(ones, ones);
  const centre = product(ones, values) / total;
  const off = values.map((x) => x - centre);
  return {
    /** Weighted sum of squared deviations. */
    chiSquare: product(off, off),
    /** How fast the expected one grows with the variance between; sum(w) - sum(w^2) / sum(w) where nothing is shared. */
    trace: (): number => {
      const ontoOnes = onto(ones);
      return weights.reduce((sum, w, i) => {
        const ontoShot = columns.map((column) => w * (column[i] as number));
        return sum + w - less(ontoShot, ontoShot) - (w - less(ontoShot, ontoOnes)) ** 2 / total;
      }, 0);
    },
  };
}

/** The scatter between shots under their own uncertainties and what they share. At least two shots, every u positive. */
export function scatterBetween(shots: readonly SeriesShot[]) {
  const values = shots.map(({ value }) => value);
  const own = shots.map(({ u }) => u);
  const columns = sharedColumns(shots).map(({ effects }) => effects);
  const at = (tau2: number) => deviationsAt(values, own, columns, tau2);
  const dof = shots.length - 1;
  const nominal = at(0);

  /** Variance between shots at which chi-square would be `wanted`; 0 where it is no more than that already. */
  const tau2For = (wanted: number): number => {
    if (nominal.chiSquare <= wanted) return 0;
    const centre = values.reduce((a, b) => a + b) / values.length;
    let low = 0;
    // Chi-square is at most the plain sum of squares over tau^2.
    let high = values.reduce((sum, x) => sum + (x - centre) ** 2, 0) / wanted;
    for (let i = 0; i < 200 && high - low > 1e-14 * high; i++) {
      const middle = (low + high) / 2;
      if (at(middle).chiSquare > wanted) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };

  const meanAt = (tau2: number): BetweenShots => {
    const weights = own.map((u) => 1 / (u * u + tau2));
    const total = weights.reduce((a, b) => a + b);
    const value = weights.reduce((sum, w, i) => sum + w * (values[i] as number), 0) / total;
    return { tau: Math.sqrt(tau2), mean: { value, u: Math.sqrt(1 / total) } };
  };

  const probability = 1 - chiSquareCdf(nominal.chiSquare, dof);
  const consistency: Consistency = {
    chiSquare: nominal.chiSquare,
    dof,
    birgeRatio: Math.sqrt(nominal.chiSquare / dof),
    probability,
    verdict: verdictOf(probability),
  };
  return {
    consistency,
    fixed: meanAt(0).mean,
    /** DerSimonian & Laird, Control. Clin. Trials 7 (1986) 177: the moment estimate, for correlated shots by the trace. */
    derSimonianLaird: meanAt(Math.max(0, (nominal.chiSquare - dof) / nominal.trace())),
    /** Paule & Mandel, J. Res. NBS 87 (1982) 377: chi-square made equal to its degrees of freedom. */
    mandelPaule: meanAt(tau2For(dof)),
    tau2For,
  };
}

function verdictOf(probability: number): ScatterVerdict {
  if (probability < SIGNIFICANCE) return 'more';
  return 1 - probability < SIGNIFICANCE ? 'less' : 'explained';
}
