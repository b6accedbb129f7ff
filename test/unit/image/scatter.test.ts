import { describe, expect, test } from 'vitest';
import { definiteInverse } from '../../../src/core/linalg';
import { gatherEquations, waveScatter } from '../../../src/image/discEquations';
import type { DiscPixels } from '../../../src/image/discPixels';
import { RAYS } from '../../../src/image/outline';
import { judgeScatter, type TimedCentre } from '../../../src/image/scatter';
import { generator } from './rendering';

type Random = ReturnType<typeof generator>;

/** Of independent noise, px. */
const U = 0.02;
const CELLS = 12;

interface Errors {
  /** Standard deviation of the places, the pulls and single pixels, in those of the stated noise. */
  readonly places: number;
  readonly pulls: number;
  readonly pixels?: number;
}

/** A flight that slows down evenly, measured with errors of which the fits' residuals have only a part. */
function flight(
  { places, pulls, pixels = 1 }: Errors,
  random: Random,
  times: readonly number[],
): TimedCentre[] {
  return times.map((time) => ({
    time,
    centre: {
      x: 20 + 12 * time - 0.05 * time * time + places * U * random.normal(),
      y: 30 + 0.7 * time + places * U * random.normal(),
      varX: U * U,
      varY: U * U,
      covXY: 0,
      radius: { value: 20, u: 0.01 },
      visible: 1,
      contrast: 100,
      saturated: 0,
      evidence: {
        pull: Float32Array.from(
          { length: CELLS },
          () => pulls * U * Math.sqrt(2 / CELLS) * random.normal(),
        ),
        expected: new Float32Array(CELLS).fill((2 * U * U) / CELLS),
        inflation: pulls * pulls,
        white: pixels * pixels,
        byShade: [0, 0],
        sigmaU: 0.01,
        stretchU: 0.1,
        learnt: { inflation: 1, unmodelled: [0, 0] },
      },
    },
  }));
}

/** Root mean square over many flights of the stated uncertainties after judging, in those of independent noise. */
function judged(errors: Errors, seed: number, times = Array.from({ length: 20 }, (_, i) => i)) {
  const random = generator(seed);
  let sum = 0;
  const flights = 60;
  for (let k = 0; k < flights; k++) {
    for (const { varX, varY } of judgeScatter(flight(errors, random, times))) {
      sum += (varX + varY) / (2 * U * U * flights * times.length);
    }
  }
  return Math.sqrt(sum);
}

describe('the scatter of the centres judged by the flight', () => {
  test('independent noise is left nearly as it was', () => {
    const u = judged({ places: 1, pulls: 1 }, 41);
    expect(u).toBeGreaterThan(0.98);
    expect(u).toBeLessThan(1.06);
  });

  test.each([0.7, 1.4])(
    'noise %f times that of the still scene is told by single pixels',
    (size) => {
      const u = judged({ places: size, pulls: size, pixels: size }, 46);
      expect(u).toBeGreaterThan(0.98 * size);
      expect(u).toBeLessThan(1.06 * size);
    },
  );

  test('errors of the whole ball, of which residuals show half, are found in the flight', () => {
    const u = judged({ places: 4, pulls: 2 }, 42);
    expect(u).toBeGreaterThan(2.9);
    expect(u).toBeLessThan(4.2);
  });

  test('frames missing and uneven times change nothing of that', () => {
    const times = Array.from({ length: 24 }, (_, i) => i + 0.2 * Math.sin(5 * i)).filter(
      (_, i) => i !== 7 && i !== 15 && i !== 16,
    );
    const u = judged({ places: 4, pulls: 2 }, 43, times);
    expect(u).toBeGreaterThan(2.9);
    expect(u).toBeLessThan(4.2);
  });

  test('where residuals show no more than noise the flight adds little', () => {
    expect(judged({ places: 4, pulls: 1 }, 44)).toBeLessThan(1.4);
  });

  test('too few frames keep what was stated', () => {
    const few = flight({ places: 4, pulls: 2 }, generator(45), [0, 1, 2, 3, 4]);
    expect(judgeScatter(few)).toEqual(few.map(({ centre }) => centre));
  });
});

describe('waves around the outline', () => {
  const PIXELS = 360;
  const angle = (i: number) => (2 * Math.PI * i) / PIXELS;
  const pixels: DiscPixels = {
    x: new Float64Array(PIXELS),
    y: new Float64Array(PIXELS),
    value: new Float64Array(PIXELS),
    background: new Float64Array(PIXELS),
    sector: Uint8Array.from({ length: PIXELS }, (_, i) => Math.floor((i * RAYS) / PIXELS)),
    edge: new Uint8Array(PIXELS).fill(1),
    used: new Uint8Array(PIXELS).fill(1),
    count: PIXELS,
    coarse: false,
    place: new Int32Array(0),
    columns: 0,
    hidden: new Uint8Array(PIXELS),
  };
  // Middle and radius of a circle from distances along its normals.
  const gradients = Float64Array.from({ length: 3 * PIXELS }, (_, k) => {
    const t = angle(Math.floor(k / 3));
    return k % 3 === 0 ? Math.cos(t) : k % 3 === 1 ? Math.sin(t) : 1;
  });
  const precision = new Float64Array(PIXELS).fill(1);

  /** Variance of the fitted x, mean square of the pulls and that of single pixels, over those of independent unit noise. */
  function ratios(noise: (random: Random) => Float64Array, seed: number) {
    const random = generator(seed);
    let shown = 0;
    let true2 = 0;
    let single = 0;
    const runs = 400;
    for (let k = 0; k < runs; k++) {
      const values = noise(random);
      const { normal, rhs } = gatherEquations(pixels, values, precision, gradients, 3);
      const inverse = definiteInverse(normal, 3);
      if (inverse === null) throw new Error('singular');
      const fitted = [0, 1, 2].map((r) =>
        [0, 1, 2].reduce((sum, c) => sum + (inverse[3 * r + c] as number) * (rhs[c] as number), 0),
      ) as [number, number, number];
      const residuals = values.map((value, i) => {
        const at = gradients.subarray(3 * i, 3 * i + 3);
        return value - fitted.reduce((sum, p, j) => sum + p * (at[j] as number), 0);
      });
      const { pull, expected, white } = waveScatter(
        pixels,
        residuals,
        precision,
        gradients,
        inverse,
        3,
      );
      single += white / runs;
      const sum = (of: Float32Array, f: (v: number) => number) =>
        of.reduce((total, v) => total + f(v), 0);
      shown += sum(pull, (v) => v * v) / sum(expected, (v) => v) / runs;
      true2 += fitted[0] ** 2 / (inverse[0] as number) / runs;
    }
    return { shown, true2, single };
  }

  test('independent noise shows as it errs', () => {
    const { shown, true2, single } = ratios(
      (random) => Float64Array.from({ length: PIXELS }, () => random.normal()),
      51,
    );
    expect(single).toBeGreaterThan(0.98);
    expect(single).toBeLessThan(1.02);
    expect(true2).toBeGreaterThan(0.8);
    expect(true2).toBeLessThan(1.2);
    expect(shown).toBeGreaterThan(0.93);
    expect(shown).toBeLessThan(1.07);
  });

  test('noise that pixels over a twelfth of the outline share shows as it errs', () => {
    const { shown, true2, single } = ratios((random) => {
      const blocks = Array.from({ length: 12 }, () => random.normal());
      return Float64Array.from({ length: PIXELS }, (_, i) => blocks[Math.floor(i / 30)] as number);
    }, 52);
    // Thirty pixels that err alike: thirty times the variance.
    expect(true2).toBeGreaterThan(23);
    // Of which single pixels know nothing.
    expect(single).toBeGreaterThan(0.6);
    expect(single).toBeLessThan(1.05);
    expect(shown / true2).toBeGreaterThan(0.7);
    expect(shown / true2).toBeLessThan(1.2);
  });
});
