import { describe, expect, it } from 'vitest';
import { quantity } from '../../src/core/quantity';
import { seededRandom } from '../../src/core/random';
import { standardDraw } from '../../src/uncertainty/draw';
import { agrees, numericalTolerance, propagate } from '../../src/uncertainty/monteCarlo';
import { independent, propagateCorrelated, standardU } from '../../src/uncertainty/propagation';
import { uniformU } from '../../src/uncertainty/quantity';

// JCGM 101:2008, 9.2: sum of four inputs of mean 0. Columns: standard deviations and kind of the inputs, standard
// uncertainty, half-width of the 95 % interval by Monte Carlo
// and by the budget.
describe.each([
  ['9.2.2 normal', [1, 1, 1, 1], 'normal', 2.0, 3.92, 3.92],
  ['9.2.3 rectangular', [1, 1, 1, 1], 'rectangular', 2.0, 3.88, 3.92],
  ['9.2.4 one large rectangular', [1, 1, 1, 10], 'rectangular', 10.15, 17.02, 19.89],
] as const)('JCGM 101 %s', (_name, spreads, kind, u, halfTrials, halfBudget) => {
  const random = seededRandom(101);
  const draw = () => standardDraw(random, kind, null);
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

const propagated = (trial: () => number, kind: 'symmetric' | 'shortest' = 'symmetric') => {
  const result = propagate(trial, {
    coverage: 0.95,
    kind,
    tolerance: 0,
    blockSize: 10_000,
    maxTrials: 400_000,
  });
  if (!result.ok) throw new Error(result.reason.message);
  return result.value;
};

// JCGM 101:2008, 9.3: calibration of a mass, deviation from 100 g in mg. Inputs and published results from memory;
// second-order result and Monte Carlo computed independently in Python as well.
describe('JCGM 101 9.3 mass calibration', () => {
  const inputs = [
    { value: 100_000, u: 0.05, spread: 'normal' },
    { value: 1.234, u: 0.02, spread: 'normal' },
    { value: 1.2, u: uniformU(0.1), spread: 'rectangular' },
    { value: 8000, u: uniformU(1000), spread: 'rectangular' },
    { value: 8000, u: uniformU(50), spread: 'rectangular' },
  ] as const;
  const model = ([m = 0, dm = 0, air = 0, w = 0, r = 0]: readonly number[]): number =>
    (m + dm) * (1 + (air - 1.2) * (1 / w - 1 / r)) - 100_000;
  const random = seededRandom(93);
  const trials = propagated(() =>
    model(inputs.map(({ value, u, spread }) => value + u * standardDraw(random, spread, null))),
  );
  const firstOrder = propagateCorrelated((x) => [model(x)], independent(inputs));
  const firstU = standardU(firstOrder, 0);
  const budget = quantity(firstOrder.values[0] as number, firstU, null, 0.95);

  it('gives 1.234 mg, u 0.0754 mg and a 95 % interval 0.299 mg wide', () => {
    expect(trials.value).toBeCloseTo(1.234, 3);
    expect(trials.u).toBeCloseTo(0.0754, 3);
    expect(trials.interval[1] - trials.interval[0]).toBeCloseTo(0.299, 2);
    expect(trials.interval[0]).toBeCloseTo(1.084, 2);
    expect(trials.interval[1]).toBeCloseTo(1.383, 2);
  });

  it('has a first-order budget of u 0.0539 mg, which clause 8 does not validate', () => {
    expect(firstU).toBeCloseTo(0.0539, 4);
    expect(budget.interval[0]).toBeCloseTo(1.1285, 3);
    expect(budget.interval[1]).toBeCloseTo(1.3395, 3);
    const tolerance = numericalTolerance(trials.u, 1);
    expect(tolerance).toBeCloseTo(0.005, 12);
    expect(agrees(budget.interval, trials.interval, tolerance)).toBe(false);
  });

  it('has a second-order one of u 0.0750 mg, which clause 8 does validate to one digit', () => {
    const second = quantity(1.234, 0.075, null, 0.95);
    expect(agrees(second.interval, trials.interval, numericalTolerance(trials.u, 1))).toBe(true);
  });
});

// JCGM 101:2008, 9.4: comparison loss X1^2 + X2^2, u = 0.005 each, x2 = 0, in units of 1e-6. Columns: x1, correlation,
// mean, u and shortest 95 % interval by Monte Carlo, estimate and u to first order. Values computed independently in
// Python; the two-figure published ones (from memory) agree.
describe.each([
  [0, 0, 50, 50, [0, 150], 0, 0],
  [0, 0.9, 50, 67, [0, 185], 0, 0],
  [0.01, 0, 150, 112, [0, 366], 100, 100],
  [0.01, 0.9, 150, 121, [13, 398], 100, 100],
  [0.05, 0, 2550, 503, [1590, 3545], 2500, 500],
  [0.05, 0.9, 2550, 505, [1621, 3551], 2500, 500],
] as const)('JCGM 101 9.4 with x1 = %d, correlation %d', (x1, r, mean, u, interval, y, firstU) => {
  const loss = ([a = 0, b = 0]: readonly number[]): number => (a * a + b * b) * 1e6;

  it('gives the published mean, u and shortest interval', () => {
    const random = seededRandom(94);
    const trials = propagated(() => {
      const [a, b] = [random.normal(), random.normal()];
      return loss([x1 + 0.005 * a, 0.005 * (r * a + Math.sqrt(1 - r * r) * b)]);
    }, 'shortest');
    expect(Math.abs(trials.value - mean)).toBeLessThan(0.012 * u);
    expect(Math.abs(trials.u / u - 1)).toBeLessThan(0.012);
    // A shortest interval is flat at its best: its ends wander together, its length does not.
    expect(Math.abs(trials.interval[0] - interval[0])).toBeLessThan(0.05 * u);
    expect(Math.abs(trials.interval[1] - interval[1])).toBeLessThan(0.05 * u);
    const length = interval[1] - interval[0];
    expect(Math.abs((trials.interval[1] - trials.interval[0]) / length - 1)).toBeLessThan(0.012);
  });

  it('gives the published first-order estimate and u', () => {
    const c = r * 0.005 ** 2;
    const covariance = [
      [0.005 ** 2, c],
      [c, 0.005 ** 2],
    ];
    const first = propagateCorrelated((x) => [loss(x)], { values: [x1, 0], covariance });
    expect(first.values[0]).toBeCloseTo(y, 9);
    expect(standardU(first, 0)).toBeCloseTo(firstU, 9);
  });
});

// Worked case of the suncal package after NPL report DEM-ES-011, 9.2: ln x of x even between 0.1 and 1.1.
it('logarithm of an even input: -0.665, u 0.606, shortest interval -1.895 to 0.095', () => {
  const random = seededRandom(95);
  const trials = propagated(() => Math.log(0.1 + random.uniform()), 'shortest');
  expect(trials.value).toBeCloseTo(-0.665, 2);
  expect(trials.u).toBeCloseTo(0.606, 2);
  expect(trials.interval[0]).toBeCloseTo(-1.895, 1);
  expect(trials.interval[1]).toBeCloseTo(0.095, 2);
});
