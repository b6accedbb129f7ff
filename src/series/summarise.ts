import type { Quantity } from '../core/estimate';
import { quantity } from '../core/quantity';
import { failure, type Outcome, success } from '../core/reason';
import { chiSquareQuantile, standardDeviation } from '../core/statistics';
import { effectiveDof } from '../uncertainty/quantity';
import { grubbsTest } from './outliers';
import { scatterBetween, sharedColumns } from './scatter';
import type { SeriesReport, SeriesShot } from './types';

const FEWEST_SHOTS = 2;

/**
 * What several shots say together. The mean is weighted by 1 / (u^2 + tau^2), u each shot's own and tau the scatter
 * between shots by Mandel and Paule. Its random part is that of Hartung & Knapp (Stat. Med. 20 (2001) 3875), with
 * equal weights the Type A evaluation of JCGM 100:2008, 4.2.3, and never less than the weights alone say; with
 * n - 1 degrees of freedom. What shots share does not average down: it is carried as one error of all that have it.
 * The weights leave the shared part out: with it they could turn negative.
 * Failures: `tooFewShots`, `shotWithoutUncertainty`.
 */
export function summariseSeries(
  shots: readonly SeriesShot[],
  coverage: number,
): Outcome<SeriesReport> {
  const n = shots.length;
  if (n < FEWEST_SHOTS) {
    return failure(
      'tooFewShots',
      `${n} shot${n === 1 ? '' : 's'} cannot show a scatter; at least ${FEWEST_SHOTS} are needed.`,
      'Add shots with an exit velocity.',
      { shots: n, fewest: FEWEST_SHOTS },
    );
  }
  const bare = shots.find(
    ({ value, u }) => !(u > 0 && Number.isFinite(u) && Number.isFinite(value)),
  );
  if (bare !== undefined) {
    return failure(
      'shotWithoutUncertainty',
      `The shot ${bare.name} has no value with an uncertainty of its own above zero, by which shots are weighed.`,
      'Look at the budget of that shot, or leave it out.',
      { form: 'zero', shot: bare.name },
    );
  }
  const { tau2For, ...scatter } = scatterBetween(shots);
  const { tau, mean } = scatter.mandelPaule;
  const spreads = shots.map(({ u }) => u * u + tau * tau);
  const total = spreads.reduce((sum, s) => sum + 1 / s, 0);
  const deviations = shots.map(
    ({ value }, i) => (value - mean.value) / Math.sqrt(spreads[i] as number),
  );
  const excess = deviations.reduce((sum, d) => sum + d * d, 0) / (n - 1);
  const randomU = Math.sqrt(Math.max(1, excess) / total);
  const shared = sharedColumns(shots).map(({ source, dof, effects }) => ({
    source,
    dof,
    contribution: Math.abs(
      effects.reduce((sum, effect, i) => sum + effect / (spreads[i] as number) / total, 0),
    ),
  }));
  const u = Math.hypot(randomU, ...shared.map(({ contribution }) => contribution));
  const dof = effectiveDof(u, [{ contribution: randomU, dof: n - 1 }, ...shared]);
  return success({
    ...scatter,
    mean: quantity(mean.value, u, dof, coverage),
    randomU,
    sharedU: Math.hypot(...shared.map(({ contribution }) => contribution)),
    sharedSources: bySource(shared),
    repeatability: repeatabilityOf(
      shots.map(({ value }) => value),
      coverage,
    ),
    launcherScatter: {
      value: tau,
      // Q profile: the values of tau under which the scatter seen is neither rare nor rarely even (Viechtbauer 2007).
      interval: [
        Math.sqrt(tau2For(chiSquareQuantile((1 + coverage) / 2, n - 1))),
        Math.sqrt(tau2For(chiSquareQuantile((1 - coverage) / 2, n - 1))),
      ],
    },
    deviations,
    grubbs: grubbsTest(shots.map(({ value }) => value)),
  });
}

/** Standard deviation of normal values, its standard uncertainty (JCGM 100:2008, E.4.3) and chi-square interval. */
function repeatabilityOf(values: readonly number[], coverage: number): Quantity {
  const dof = values.length - 1;
  const value = standardDeviation(values);
  const end = (probability: number) => value * Math.sqrt(dof / chiSquareQuantile(probability, dof));
  return {
    value,
    u: value / Math.sqrt(2 * dof),
    interval: [end((1 + coverage) / 2), end((1 - coverage) / 2)],
    coverage,
    dof,
  };
}

function bySource(
  parts: readonly { readonly source: string; readonly contribution: number }[],
): { source: string; u: number }[] {
  const sums = new Map<string, number>();
  for (const { source, contribution } of parts) {
    sums.set(source, Math.hypot(sums.get(source) ?? 0, contribution));
  }
  return [...sums].map(([source, u]) => ({ source, u })).sort((a, b) => b.u - a.u);
}
