import { describe, expect, it } from 'vitest';
import { moistSoundSpeed, soundSpeed } from '../../src/core/air';
import { seededRandom } from '../../src/core/random';
import { mean, standardDeviation } from '../../src/core/statistics';
import { likeliestChange } from '../../src/sound/aic';
import { travelTime } from '../../src/sound/travel';

describe('speed of sound in moist air', () => {
  it('is that of ISO 2533:1975 in dry air', () => {
    expect(moistSoundSpeed(293.15, 101_325, 0)).toBeCloseTo(soundSpeed(293.15), 6);
  });

  // Cramer, J. Acoust. Soc. Am. 93 (1993) 2510: about +0.35 % at 100 % humidity and 20 C (value from memory).
  it('is about 0.35 % higher when saturated at 20 C', () => {
    const share = moistSoundSpeed(293.15, 101_325, 1) / soundSpeed(293.15) - 1;
    expect(share).toBeGreaterThan(0.0032);
    expect(share).toBeLessThan(0.004);
  });

  // r / a at 1 m and 20 C: 2.913 ms; 1 cm moves it by 29 us (evaluated independently in Python).
  it('takes 2.913 ms over a metre', () => {
    const way = travelTime({ value: 1, u: 0.01 }, { value: soundSpeed(293.15), u: 0 });
    expect(1e3 * way.value).toBeCloseTo(2.913, 3);
    expect(1e6 * way.u).toBeCloseTo(29.1, 1);
  });
});

// Picker of Maeda, Zisin 38 (1985) 365. Monte Carlo of 400 samples of white noise, after 200 of them 2, 5 or 20 times as
// strong: bias and standard deviation in samples, computed independently in Python. How much of either end is left out
// decides the rare far misses, so the weakest case's deviation came out as 4.7 and, with 10 samples left out, as 5.9.
it.each([
  [2, 1.8, 4.7],
  [5, 0.4, 1.1],
  [20, 0.1, 0.4],
])('the picker where the noise grows %d times', (times, bias, spread) => {
  const random = seededRandom(5);
  const errors = Array.from({ length: 4000 }, () => {
    const x = Float64Array.from({ length: 400 }, (_, i) => random.normal() * (i < 200 ? 1 : times));
    return (likeliestChange(x, 0) ?? Number.POSITIVE_INFINITY) - 200;
  });
  expect(Math.abs(mean(errors) - bias)).toBeLessThan(0.15 * spread + 0.1);
  expect(standardDeviation(errors) / spread).toBeGreaterThan(0.75);
  expect(standardDeviation(errors) / spread).toBeLessThan(1.4);
});
