import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/core/random';
import { fitLinear } from '../../../src/fit/linear';
import { fitRobustly } from '../../../src/fit/robust';

const n = 20;
const design = Float64Array.from({ length: 2 * n }, (_, i) => (i < n ? 1 : i - n));
const sigmas = new Float64Array(n).fill(0.1);
const line = (seed: number) => {
  const random = seededRandom(seed);
  return Float64Array.from({ length: n }, (_, i) => 2 + 3 * i + 0.1 * random.normal());
};
const robust = (observed: Float64Array) => {
  const fit = fitRobustly((s) => fitLinear(design, observed, s), sigmas, 2);
  if (fit === null) throw new Error('no fit');
  return fit;
};

describe('fitRobustly', () => {
  it('lets gross errors go and finds the line through the rest', () => {
    const observed = line(1);
    observed[4] = (observed[4] as number) + 40;
    observed[17] = (observed[17] as number) - 3;
    const { fit, weights } = robust(observed);
    expect(weights[4]).toBe(0);
    expect(weights[17]).toBe(0);
    expect(fit.parameters[0]).toBeCloseTo(2, 0);
    expect(Math.abs((fit.parameters[1] as number) - 3)).toBeLessThan(0.02);
  });

  it('keeps all of a clean sample', () => {
    const { weights, scatter } = robust(line(2));
    expect(Math.min(...weights)).toBeGreaterThan(0.1);
    expect(scatter).toBeLessThan(2);
  });

  it('takes scatter beyond the stated uncertainty as scatter, not as errors', () => {
    const random = seededRandom(8);
    const observed = line(3).map((y) => y + 0.5 * random.normal());
    const { weights, scatter } = robust(observed);
    expect(scatter).toBeGreaterThan(2.5);
    expect(weights.filter((w) => w === 0)).toHaveLength(0);
  });

  it('gives nothing where the fit under it gives nothing', () => {
    expect(fitRobustly(() => null, sigmas, 2)).toBeNull();
  });
});
