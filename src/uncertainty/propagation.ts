import type { Estimate } from '../core/estimate';
import type { Rows } from '../core/linalg';
import { ExitframeError } from '../core/reason';
import { mean } from '../core/statistics';

/** Estimates that may err together. */
export interface Correlated {
  readonly values: readonly number[];
  /** Covariance of their errors, one row a value. */
  readonly covariance: Rows;
}

export const independent = (estimates: readonly Estimate[]): Correlated => ({
  values: estimates.map(({ value }) => value),
  covariance: estimates.map(({ u }, i) => estimates.map((_, j) => (i === j ? u * u : 0))),
});

export const standardU = ({ covariance }: Correlated, index: number): number =>
  Math.sqrt(Math.max(0, covariance[index]?.[index] as number));

export function correlation(of: Correlated, a: number, b: number): number {
  const product = standardU(of, a) * standardU(of, b);
  return product > 0 ? (of.covariance[a]?.[b] as number) / product : 0;
}

/**
 * What one standard uncertainty of each input does to the results of `model`: half the difference between moving it
 * up and down (JCGM 100:2008, 5.1.3, note 2). One row an input, one column a result.
 */
export function effects(
  model: (inputs: readonly number[]) => readonly number[],
  estimates: readonly Estimate[],
): Rows {
  const values = estimates.map(({ value }) => value);
  return estimates.map(({ value, u }, i) => {
    const up = model(values.with(i, value + u));
    const down = model(values.with(i, value - u));
    return up.map((y, k) => (y - (down[k] as number)) / 2);
  });
}

/**
 * Law of propagation of uncertainty, inputs correlated, several results at once (JCGM 100:2008, 5.2.2, eq. 13, and
 * H.2.3, eq. H.9): the results of `model` at the estimates with their covariance to first order.
 */
export function propagateCorrelated(
  model: (inputs: readonly number[]) => readonly number[],
  inputs: Correlated,
): Correlated {
  const estimates = inputs.values.map((value, i) => ({ value, u: standardU(inputs, i) }));
  const moved = effects(model, estimates);
  const values = model(inputs.values);
  const pairs = estimates.flatMap((_, i) =>
    estimates.map((_unused, j) => ({ i, j, r: i === j ? 1 : correlation(inputs, i, j) })),
  );
  const covariance = values.map((_, a) =>
    values.map((_unused, b) =>
      pairs.reduce(
        (sum, { i, j, r }) => sum + r * (moved[i]?.[a] as number) * (moved[j]?.[b] as number),
        0,
      ),
    ),
  );
  return { values, covariance };
}

/**
 * Means of quantities observed together, one row an occasion, with the covariance of the means (JCGM 100:2008,
 * 4.2.3 and 5.2.3, eq. 17). At least two occasions.
 */
export function meansOf(occasions: Rows): Correlated {
  const n = occasions.length;
  const quantities = occasions[0]?.length ?? 0;
  if (n < 2 || occasions.some((row) => row.length !== quantities)) {
    throw new ExitframeError(
      'badArgument',
      'Means with a covariance need two occasions or more, each of the same quantities.',
    );
  }
  const values = Array.from({ length: quantities }, (_, k) =>
    mean(occasions.map((row) => row[k] as number)),
  );
  const off = occasions.map((row) => row.map((x, k) => x - (values[k] as number)));
  const covariance = values.map((_, a) =>
    values.map(
      (_unused, b) =>
        off.reduce((sum, row) => sum + (row[a] as number) * (row[b] as number), 0) / (n * (n - 1)),
    ),
  );
  return { values, covariance };
}
