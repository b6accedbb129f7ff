import { describe, expect, it } from 'vitest';
import { type Random, seededRandom } from '../../src/core/random';
import { agrees, numericalTolerance, propagate } from '../../src/uncertainty/monteCarlo';
import { quantity } from '../../src/uncertainty/quantity';

const rectangular = (random: Random) => Math.sqrt(3) * (2 * random.uniform() - 1);

// JCGM 101:2008, 9.2: sum of four inputs of mean 0. Columns: standard deviations and kind of the inputs, standard
// uncertainty, half-width of the 95 % interval by Monte Carlo
// and by the budget.
describe.each([
  ['9.2.2 normal', [1, 1, 1, 1], 'normal', 2.0, 3.92, 3.92],
  ['9.2.3 rectangular', [1, 1, 1, 1], 'rectangular', 2.0, 3.88, 3.92],
  ['9.2.4 one large rectangular', [1, 1, 1, 10], 'rectangular', 10.15, 17.02, 19.89],
] as const)('JCGM 101 %s', (_name, spreads, kind, u, halfTrials, halfBudget) => {
  const random = seededRandom(101);
  const draw = kind === 'normal' ? () => random.normal() : () => rectangular(random);
  const result = propagate(() => spreads.reduce((sum, spread) => sum + spread * draw(), 0), {
    coverage: 0.95,
    tolerance: 0,
    blockSize: 10_000,
    maxTrials: 400_000,
  });
  if (!result.ok) throw new Error(result.reason.message);
  const found = result.value;

  it('gives the published standard uncertainty and interval', () => {
    expect(found.trials).toBe(400_000);
    // 400 000 trials leave u a standard deviation of 0.1 % and the ends one of 0.3 %.
    expect(Math.abs(found.value)).toBeLessThan(0.006 * u);
    expect(Math.abs(found.u / u - 1)).toBeLessThan(0.006);
    expect(Math.abs(found.interval[1] / halfTrials - 1)).toBeLessThan(0.01);
    expect(Math.abs(found.interval[0] / -halfTrials - 1)).toBeLessThan(0.01);
  });

  it('compares with the budget as clause 8 says', () => {
    const budget = quantity(0, Math.hypot(...spreads), null, 0.95);
    expect(Math.abs(budget.interval[1] / halfBudget - 1)).toBeLessThan(0.003);
    // To two digits the tolerance is 0.05 for u = 2.0 and 0.5 for u = 10: only the last case differs by more.
    expect(agrees(budget.interval, found.interval, numericalTolerance(found.u, 2))).toBe(
      halfBudget - halfTrials < 1,
    );
  });
});

// JCGM 101:2008, 7.9.2, examples: 35 g to two digits has 0.5; 2e-4 to one digit has 5e-5.
it.each([
  [35, 2, 0.5],
  [0.0002, 1, 5e-5],
  [0.43, 1, 0.05],
] as const)('numerical tolerance of u = %d to %i digits is %d', (u, digits, tolerance) => {
  expect(numericalTolerance(u, digits)).toBeCloseTo(tolerance, 12);
});
