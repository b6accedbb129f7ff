import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/core/random';
import { fitLinear } from '../../../src/fit/linear';
import {
  type Curve,
  createSolver,
  fitNonlinear,
  withDifferences,
} from '../../../src/fit/nonlinear';

const covarianceOf = (fit: ReturnType<typeof fitLinear>): Float64Array => {
  if (!fit.covariance.ok) throw new Error(fit.covariance.reason.message);
  return fit.covariance.value;
};

describe('weights', () => {
  // Three values of one quantity: weighted mean and its variance by hand.
  const observed = Float64Array.of(10, 12, 17);
  const sigmas = Float64Array.of(1, 2, 4);
  const sum = 1 + 1 / 4 + 1 / 16;
  const expected = (10 + 12 / 4 + 17 / 16) / sum;
  const constant: Curve = (parameters, values, jacobian) => {
    values.fill(parameters[0] as number);
    jacobian?.fill(1);
  };

  it.each([
    ['linear', () => fitLinear(new Float64Array(3).fill(1), observed, sigmas)],
    ['nonlinear', () => fitNonlinear(constant, observed, sigmas, Float64Array.of(0))],
  ])('are one over the variance in the %s fit', (_kind, run) => {
    const fit = run();
    expect(fit.parameters[0]).toBeCloseTo(expected, 9);
    expect(covarianceOf(fit)[0]).toBeCloseTo(1 / sum, 12);
    expect(fit.dof).toBe(2);
    expect(fit.chiSquare).toBeCloseTo(
      (10 - expected) ** 2 + (12 - expected) ** 2 / 4 + (17 - expected) ** 2 / 16,
      9,
    );
  });
});

describe('a fit the data leave open', () => {
  const twins = Float64Array.from([1, 2, 3, 4, 1, 2, 3, 4]);
  const ones = new Float64Array(4).fill(1);

  it('says that two parameters cannot be told apart, and still fits', () => {
    const fit = fitLinear(twins, Float64Array.of(2, 4, 6, 8), ones);
    expect(fit.covariance).toMatchObject({ ok: false, reason: { code: 'parametersNotSeparable' } });
    expect(fit.chiSquare).toBeLessThan(1e-20);
    expect(fit.parameters[0]).toBeCloseTo(1, 9);
  });

  it('says that a parameter has no effect', () => {
    const design = Float64Array.from([1, 2, 3, 4, 0, 0, 0, 0]);
    const fit = fitLinear(design, Float64Array.of(2, 4, 6, 8), ones);
    expect(fit.covariance).toMatchObject({ ok: false, reason: { code: 'parameterWithoutEffect' } });
  });

  it('refuses an observation without an uncertainty', () => {
    expect(() => fitLinear(ones, ones, Float64Array.of(1, 0, 1, 1))).toThrow('Observation 1');
  });
});

describe('the nonlinear fit', () => {
  const x = Float64Array.from({ length: 12 }, (_, i) => i / 2);
  const model = (parameters: Float64Array, values: Float64Array): void => {
    const [a = 0, b = 0] = parameters;
    for (let i = 0; i < x.length; i++) values[i] = a * Math.exp(-b * (x[i] as number));
  };
  const analytic: Curve = (parameters, values, jacobian) => {
    model(parameters, values);
    const a = parameters[0] as number;
    for (let i = 0; jacobian !== null && i < x.length; i++) {
      jacobian[i] = (values[i] as number) / a;
      jacobian[x.length + i] = -(x[i] as number) * (values[i] as number);
    }
  };
  const noisy = () => {
    const values = new Float64Array(x.length);
    model(Float64Array.of(3, 0.4), values);
    const random = seededRandom(3);
    return values.map((value) => value + 0.01 * random.normal());
  };
  const sigmas = new Float64Array(x.length).fill(0.01);

  it('agrees with derivatives and with differences', () => {
    const start = Float64Array.of(1, 1);
    const one = fitNonlinear(analytic, noisy(), sigmas, start);
    const other = fitNonlinear(withDifferences(model), noisy(), sigmas, start);
    expect(one.stop.converged).toBe(true);
    for (const j of [0, 1]) {
      const u = Math.sqrt(covarianceOf(one)[3 * j] as number);
      expect(
        Math.abs((one.parameters[j] as number) - (other.parameters[j] as number)),
      ).toBeLessThan(1e-5 * u);
      expect(Math.abs((one.parameters[j] as number) - (j === 0 ? 3 : 0.4))).toBeLessThan(4 * u);
    }
  });

  it('states why it stopped', () => {
    const start = Float64Array.of(1, 1);
    expect(fitNonlinear(analytic, noisy(), sigmas, start, { maxIterations: 1 }).stop).toEqual({
      reason: 'iterationLimit',
      converged: false,
      iterations: 1,
    });
    const nowhere: Curve = (_parameters, values) => values.fill(Number.NaN);
    const solver = createSolver(x.length, 2);
    expect(solver.solve(nowhere, noisy(), sigmas, Float64Array.of(1, 1))).toMatchObject({
      reason: 'notFinite',
      converged: false,
    });
  });

  it('solves again in the same memory with the same answer', () => {
    const solver = createSolver(x.length, 2);
    const solve = () => {
      const parameters = Float64Array.of(1, 1);
      solver.solve(analytic, noisy(), sigmas, parameters);
      return parameters;
    };
    expect(solve()).toEqual(solve());
  });
});
