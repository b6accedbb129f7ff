import library from '@techstark/opencv-js';
import { describe, expect, it } from 'vitest';
import { createSolver, withDifferences } from '../../src/fit/nonlinear';
import { measureCentre } from '../../src/image/centre';
import { loadVision } from '../../src/image/opencv/vision';
import { expose, generator, render } from '../unit/image/rendering';
import { run } from '../unit/image/trials';

type Points = readonly (readonly [x: number, y: number])[];
interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/**
 * Gander, Golub and Strebel, "Least-squares fitting of circles and ellipses", BIT 34 (1994) 558: their
 * six points and, to four decimals, the circles they give (from memory, recomputed independently).
 */
const SIX: Points = [
  [1, 7],
  [2, 6],
  [5, 8],
  [7, 7],
  [9, 5],
  [3, 7],
];
const GEOMETRIC: Circle = { x: 4.7398, y: 2.9835, radius: 4.7142 };

/**
 * Kåsa's algebraic fit: least squares of x^2 + y^2 - 2 a x - 2 b y - c, written out for the test (Kåsa, IEEE
 * Trans. Instrum. Meas. 25 (1976) 8).
 */
function kasa(points: Points): Circle {
  const n = points.length;
  const mx = points.reduce((sum, [x]) => sum + x, 0) / n;
  const my = points.reduce((sum, [, y]) => sum + y, 0) / n;
  let [xx, xy, yy, xz, yz, zz] = [0, 0, 0, 0, 0, 0];
  for (const [px, py] of points) {
    const x = px - mx;
    const y = py - my;
    const z = x * x + y * y;
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * z;
    yz += y * z;
    zz += z;
  }
  const det = xx * yy - xy * xy;
  const a = (xz * yy - yz * xy) / det / 2;
  const b = (yz * xx - xz * xy) / det / 2;
  return { x: a + mx, y: b + my, radius: Math.sqrt(zz / n + a * a + b * b) };
}

/** Least squares of the distances from the circle, by the fit that the exit speed is found with. */
function geometric(points: Points): Circle {
  const { x, y, radius } = kasa(points);
  const parameters = Float64Array.of(x, y, radius);
  const n = points.length;
  const stop = createSolver(n, 3).solve(
    withDifferences(([a = 0, b = 0, r = 0], values) => {
      for (const [i, [px, py]] of points.entries()) values[i] = Math.hypot(px - a, py - b) - r;
    }),
    new Float64Array(n),
    new Float64Array(n).fill(1),
    parameters,
  );
  expect(stop.converged).toBe(true);
  const [a = 0, b = 0, r = 0] = parameters;
  return { x: a, y: b, radius: r };
}

describe('circle through points against a published example', () => {
  it('fits the six points of Gander, Golub and Strebel as they do', () => {
    const circle = geometric(SIX);
    expect(circle.x).toBeCloseTo(GEOMETRIC.x, 3);
    expect(circle.y).toBeCloseTo(GEOMETRIC.y, 3);
    expect(circle.radius).toBeCloseTo(GEOMETRIC.radius, 3);
  });
});

/** Mean and its standard error. */
function meanOf(values: readonly number[]): { mean: number; error: number } {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, error: Math.sqrt(square / (values.length - 1) / values.length) };
}

describe('short arcs', () => {
  // Chernov, Circular and Linear Regression (2010), ch. 7: on short noisy arcs Kåsa's fit is biased
  // heavily towards small circles, the geometric fit far less and the other way.
  it('draw an algebraic fit to a small radius, a geometric one hardly', () => {
    const random = generator(41);
    const radius = 20;
    const algebraic: number[] = [];
    const least: number[] = [];
    for (let trial = 0; trial < 300; trial++) {
      const points = Array.from({ length: 30 }, (_, k) => {
        const angle = ((k / 29 - 0.5) * Math.PI) / 2;
        return [
          radius * Math.cos(angle) + 0.3 * random.normal(),
          radius * Math.sin(angle) + 0.3 * random.normal(),
        ] as const;
      });
      algebraic.push(kasa(points).radius - radius);
      least.push(geometric(points).radius - radius);
    }
    const small = meanOf(algebraic);
    const fair = meanOf(least);
    expect(small.mean).toBeLessThan(-5 * small.error);
    expect(Math.abs(fair.mean)).toBeLessThan(Math.abs(small.mean) / 2);
  });

  it('do not draw the centre of a half-hidden ball: it is fitted with its radius known', () => {
    // A wall hides the ball's left up to its middle. Kåsa's fit to such an arc has its centre too far
    // from the wall, because too small a circle hugs the arc.
    const trials = run({ radius: 16, noise: 6, wallAt: 0, radiusSpread: 0.005 }, 40, 19);
    expect(trials.measured.length).toBeGreaterThan(36);
    const [x, y] = trials.bias;
    const error = trials.rms.map((rms) => rms / Math.sqrt(trials.measured.length));
    expect(Math.abs(x)).toBeLessThan(0.05 + 2 * (error[0] as number));
    expect(Math.abs(y)).toBeLessThan(0.05 + 2 * (error[1] as number));
    const radius = meanOf(trials.measured.map((one) => one.radius.value - 16));
    expect(Math.abs(radius.mean)).toBeLessThan(0.1 + 2 * radius.error);
  });
});

/** The library's moments; its own type files need a page's types. */
interface Library {
  readonly Mat: new (
    rows: number,
    columns: number,
    type: number,
  ) => { readonly data: Uint8Array; delete(): void };
  readonly CV_8UC1: number;
  moments(image: unknown, binary: boolean): { m00: number; m10: number; m01: number };
}

describe('an even disc against the moments of OpenCV', () => {
  const size = 64;
  const level = 60;
  const bright = 180;

  /** Centroid of a mask by the library. */
  function centroid(mask: Uint8Array): Pick<Circle, 'x' | 'y'> {
    const cv = library as unknown as Library;
    const mat = new cv.Mat(size, size, cv.CV_8UC1);
    try {
      mat.data.set(mask);
      const { m00, m10, m01 } = cv.moments(mat, true);
      return { x: m10 / m00, y: m01 / m00 };
    } finally {
      mat.delete();
    }
  }

  it('has the centre of the mask, to what its whole pixels allow', async () => {
    await loadVision();
    const random = generator(5);
    const radius = 20;
    const dx: number[] = [];
    const dy: number[] = [];
    for (let trial = 0; trial < 12; trial++) {
      const centre = [31 + random.uniform(), 31 + random.uniform()] as const;
      const image = render({ width: size, height: size, centre, radius, optics: 0.6 });
      const frame = expose(image, size, size, 3, random);
      const mask = Uint8Array.from(frame.data, (v) => (v > (level + bright) / 2 ? 1 : 0));
      const theirs = centroid(mask);
      const ours = measureCentre(
        frame,
        {
          width: size,
          height: size,
          white: 255,
          noise: { readVariance: 9 + 1 / 12, gain: 0 },
          level: new Float32Array(size * size).fill(level),
        },
        [centre[0] + 2, centre[1] - 3],
        { radius: 20.1, blur: [0, 0], region: [0, 0, size, size] },
      );
      if (!ours.ok) throw new Error(ours.reason.message);
      dx.push(ours.value.x - theirs.x);
      dy.push(ours.value.y - theirs.y);
    }
    // Whole pixels along 126 px of edge move a mask's centroid by a few hundredths of a pixel, at random.
    for (const difference of [...dx, ...dy]) expect(Math.abs(difference)).toBeLessThan(0.12);
    for (const all of [dx, dy]) {
      const { mean, error } = meanOf(all);
      expect(Math.abs(mean)).toBeLessThan(0.02 + 2 * error);
    }
  });
});
