import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/core/random';
import { fitLineBoth } from '../../src/fit/lineBoth';

/**
 * Pearson's data (Phil. Mag. 2 (1901) 559) with the weights of York, Can. J. Phys. 44 (1966) 1079: the data as in scipy's
 * tests, the weights from memory. Reference values: the iteration of York et al., Am. J. Phys. 72 (2004) 367, and ODRPACK,
 * worked out apart from this program, which agree with each other and with published results (slope -0.48053(5799),
 * intercept 5.47991(29497), chi-square 11.87).
 */
const X = [0.0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4];
const Y = [5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5];
const WX = [1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1.0];
const WY = [1.0, 1.8, 4.0, 8.0, 20, 20, 70, 70, 100, 500];
const pearson = X.map((x, i) => ({
  x,
  y: Y[i] as number,
  varX: 1 / (WX[i] as number),
  varY: 1 / (WY[i] as number),
  covXY: 0,
}));
const fitted = (points: Parameters<typeof fitLineBoth>[0], start = 0) => {
  const fit = fitLineBoth(points, start);
  if (!fit.ok) throw new Error(fit.reason.message);
  return fit.value;
};

describe("York's line through Pearson's data", () => {
  it.each([0, -1, 2])('is the published one, from a slope of %d', (start) => {
    const fit = fitted(pearson, start);
    expect(fit.slope).toBeCloseTo(-0.480533407, 8);
    expect(fit.intercept).toBeCloseTo(5.479910224, 8);
    expect(fit.slopeU).toBeCloseTo(0.057985, 6);
    expect(fit.interceptU).toBeCloseTo(0.2949707, 6);
    // Published as -0.01651 with the measured places' mean; with that of the fitted ones, as the intercept's u has it:
    expect(fit.covariance).toBeCloseTo(-0.01647, 5);
    expect(fit.chiSquare).toBeCloseTo(11.8663532, 6);
    expect(fit.dof).toBe(8);
  });

  it('is the same line with the coordinates exchanged', () => {
    const exchanged = pearson.map(({ x, y, varX, varY }) => ({
      ...{ x: y, y: x, covXY: 0 },
      varX: varY,
      varY: varX,
    }));
    expect(1 / fitted(exchanged, -2).slope).toBeCloseTo(-0.480533407, 8);
  });
});

it('a line through points turned with their covariances turns with them', () => {
  const [c, s] = [Math.cos(0.3), Math.sin(0.3)];
  const turned = pearson.map(({ x, y, varX, varY }) => ({
    x: c * x - s * y,
    y: s * x + c * y,
    varX: c * c * varX + s * s * varY,
    varY: s * s * varX + c * c * varY,
    covXY: c * s * (varX - varY),
  }));
  expect(Math.atan(fitted(turned).slope)).toBeCloseTo(Math.atan(-0.480533407) + 0.3, 8);
});

it('states the scatter of its slope over many draws', () => {
  const random = seededRandom(4);
  let squares = 0;
  const runs = 2000;
  for (let run = 0; run < runs; run++) {
    const points = Array.from({ length: 12 }, (_, i) => {
      const common = random.normal();
      return {
        x: i + 0.2 * common,
        y: 1 + 0.5 * i + 0.15 * common + 0.1 * random.normal(),
        varX: 0.04,
        varY: 0.0325,
        covXY: 0.03,
      };
    });
    const { slope, slopeU } = fitted(points);
    squares += ((slope - 0.5) / slopeU) ** 2;
  }
  // Root mean square of 2000 normal draws: 1 within 0.016 (one standard deviation).
  expect(Math.abs(Math.sqrt(squares / runs) - 1)).toBeLessThan(0.05);
});

it('one point, or points in one place, give no line', () => {
  const [first] = pearson;
  if (first === undefined) throw new Error('There are points.');
  const code = { ok: false, reason: { code: 'lineUndetermined' } };
  expect(fitLineBoth([first], 0)).toMatchObject(code);
  expect(fitLineBoth([first, first], 0)).toMatchObject(code);
});
