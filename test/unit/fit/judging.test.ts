import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/core/random';
import { akaike, akaikeWeights } from '../../../src/fit/modelChoice';
import { chiSquareCheck, runsCheck, serialCorrelationCheck } from '../../../src/fit/residualChecks';

describe('Akaike', () => {
  it('adds two a parameter where the covariance is known', () => {
    expect(akaike(7, 3, 10, 1)).toBe(13);
  });

  it('scales chi-square and corrects small samples where it is not', () => {
    // 8 / 2 + 2 * 3 + 2 * 3 * 4 / (10 - 3 - 1)
    expect(akaike(8, 3, 10, 2)).toBe(14);
    expect(akaike(8, 3, 4, 2)).toBe(Number.POSITIVE_INFINITY);
  });

  // Burnham & Anderson, Model Selection and Multimodel Inference, 2nd ed. 2002, 2.9: weights go as exp(-difference / 2).
  it('weighs models by half their difference', () => {
    const [a = 0, b = 0, c = 0] = akaikeWeights([10, 12, Number.POSITIVE_INFINITY]);
    expect(a + b).toBeCloseTo(1, 12);
    expect(a / b).toBeCloseTo(Math.E, 12);
    expect(c).toBe(0);
  });
});

describe('residual checks', () => {
  const random = seededRandom(4);
  const white = Array.from({ length: 40 }, () => random.normal());
  const wave = Array.from({ length: 40 }, (_, i) => Math.sin(i / 4));
  const alternating = Array.from({ length: 40 }, (_, i) => (i % 2 === 0 ? 1 : -1));

  it('pass white residuals', () => {
    expect(runsCheck(white).passed).toBe(true);
    expect(serialCorrelationCheck(white).passed).toBe(true);
    expect(chiSquareCheck(38, 38).passed).toBe(true);
  });

  it('find a wave and alternation', () => {
    expect(runsCheck(wave)).toMatchObject({
      passed: false,
      message: expect.stringMatching(/keep their sign/),
    });
    expect(runsCheck(alternating)).toMatchObject({
      passed: false,
      message: expect.stringMatching(/alternate/),
    });
    expect(serialCorrelationCheck(wave).passed).toBe(false);
  });

  it('find scatter too large and too small', () => {
    expect(chiSquareCheck(90, 38)).toMatchObject({
      passed: false,
      message: expect.stringMatching(/1\.54 times/),
    });
    expect(chiSquareCheck(8, 38)).toMatchObject({
      passed: false,
      message: expect.stringMatching(/only 0\.46 times/),
    });
  });

  it('say so where there is too little to check', () => {
    expect(chiSquareCheck(0, 0).message).toMatch('No frame is left over');
    expect(runsCheck([1, -1, 1]).message).toMatch('Too few');
    expect(serialCorrelationCheck([1, -1, 1]).message).toMatch('Too few');
  });

  // Five runs of ten above and ten below: expected 11, variance 10 * 9 / 19 (Wald & Wolfowitz 1940).
  it('count runs', () => {
    const runs = [4, 5, 3, 5, 3].flatMap((length, i) =>
      Array.from({ length }, () => (i % 2 === 0 ? 1 : -1)),
    );
    expect((11 - 5) / Math.sqrt(90 / 19)).toBeGreaterThan(2.576);
    expect(runsCheck(runs).passed).toBe(false);
  });
});
