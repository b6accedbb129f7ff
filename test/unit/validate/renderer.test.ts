import { describe, expect, it } from 'vitest';
import { expose, varianceAt } from '../../validate/render/camera';
import { coverOfCell } from '../../validate/render/cell';
import { expectation, stillPicture } from '../../validate/render/picture';
import { randomStream } from '../../validate/render/random';
import type { Backdrop, Ball, Scene, Window } from '../../validate/render/scene';

const backdrop: Backdrop = { level: 60, slope: [0, 0], waves: [], flange: null };
const ball: Ball = {
  x: 30.37,
  y: 28.81,
  radius: 14.3,
  sweep: [0, 0],
  brightness: 160,
  light: null,
};
const window: Window = { x0: 0, y0: 0, width: 62, height: 60 };
const scene = (change: Partial<Scene>): Scene => ({
  backdrop,
  ball,
  fragment: null,
  softness: 0.5,
  ...change,
});

/** Flux, middle and second moments of what stands out from the background of 60. */
function moments(picture: Float64Array) {
  let flux = 0;
  let x = 0;
  let y = 0;
  let xx = 0;
  let yy = 0;
  picture.forEach((value, p) => {
    const d = value - 60;
    const px = p % window.width;
    const py = Math.floor(p / window.width);
    flux += d;
    x += d * px;
    y += d * py;
    xx += d * px * px;
    yy += d * py * py;
  });
  return {
    flux,
    x: x / flux,
    y: y / flux,
    xx: xx / flux - (x / flux) ** 2,
    yy: yy / flux - (y / flux) ** 2,
  };
}

/** Error function: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 7.1.26, error below 1.5e-7. */
function erf(x: number): number {
  const t = 1 / (1 + 0.3275911 * Math.abs(x));
  const p =
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  return Math.sign(x) * (1 - p * Math.exp(-x * x));
}

describe('rendered pictures', () => {
  it('hold the exact area, middle and second moments of a blurred disc', () => {
    const { radius, x, y } = ball;
    const m = moments(expectation(scene({}), window));
    expect(m.flux / 100 / (Math.PI * radius ** 2)).toBeCloseTo(1, 4);
    expect(m.x).toBeCloseTo(x, 4);
    expect(m.y).toBeCloseTo(y, 4);
    // Variances add: a disc's radius^2 / 4, the optics', a pixel's 1/12.
    expect(m.xx).toBeCloseTo(radius ** 2 / 4 + 0.25 + 1 / 12, 2);
    expect(m.yy).toBeCloseTo(radius ** 2 / 4 + 0.25 + 1 / 12, 2);
  });

  it('hold the same of an ellipse, as perspective draws a sphere', () => {
    const drawnOut = [1.03, 1.01] as const;
    for (const light of [null, { ambient: 0.4, azimuth: 0.7, tilt: 1, limb: 0.2 }]) {
      const m = moments(expectation(scene({ ball: { ...ball, light, drawnOut } }), window));
      const round = moments(expectation(scene({ ball: { ...ball, light } }), window));
      expect(m.flux / round.flux).toBeCloseTo(drawnOut[0] * drawnOut[1], 4);
      expect(m.x - ball.x).toBeCloseTo(drawnOut[0] * (round.x - ball.x), 4);
      expect(m.y - ball.y).toBeCloseTo(drawnOut[1] * (round.y - ball.y), 4);
      const others = 0.25 + 1 / 12;
      expect(m.xx - others).toBeCloseTo(drawnOut[0] ** 2 * (round.xx - others), 2);
      expect(m.yy - others).toBeCloseTo(drawnOut[1] ** 2 * (round.yy - others), 2);
    }
  });

  it('draw a disc out by the variance of an even motion, its middle kept', () => {
    const sweep = [12, 3] as const;
    const still = moments(expectation(scene({}), window));
    const moved = moments(expectation(scene({ ball: { ...ball, sweep } }), window));
    expect(moved.x).toBeCloseTo(ball.x, 3);
    expect(moved.xx - still.xx).toBeCloseTo(sweep[0] ** 2 / 12, 1);
    expect(moved.yy - still.yy).toBeCloseTo(sweep[1] ** 2 / 12, 1);
  });

  it('are as exact as cells four times finer, to a thousandth of the contrast', () => {
    const light = { ambient: 0.4, azimuth: 0.7, tilt: 1, limb: 0.2 };
    for (const change of [{}, { ball: { ...ball, light } }]) {
      const coarse = expectation(scene(change), window);
      const fine = expectation(scene(change), window, 32);
      const worst = coarse.reduce(
        (most, value, p) => Math.max(most, Math.abs(value - (fine[p] ?? 0))),
        0,
      );
      expect(worst / 100).toBeLessThan(1e-3);
    }
  });

  it('of slope and waves alone are those of the closed form', () => {
    const waves = [
      { wave: [0.5, -0.3] as const, phase: 1, amplitude: 5 },
      { wave: [-0.1, 0.7] as const, phase: 2, amplitude: 3 },
    ];
    const uneven: Backdrop = { ...backdrop, slope: [0.2, -0.1], waves };
    const drawn = expectation(scene({ backdrop: uneven, ball: null }), window);
    const still = stillPicture(uneven, 0.5, window);
    const worst = drawn.reduce((most, v, p) => Math.max(most, Math.abs(v - (still[p] ?? 0))), 0);
    expect(worst).toBeLessThan(0.005);
  });

  it('have the profile of a straight edge blurred by optics and pixel', () => {
    const flange = { normal: [1, 0] as const, offset: 30.27, level: 160 };
    const picture = expectation(scene({ ball: null, backdrop: { ...backdrop, flange } }), window);
    // Integral of the normal distribution's cumulative over a pixel.
    const antiderivative = (z: number) =>
      (z / 2) * (1 + erf(z / Math.SQRT2)) + Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
    const sigma = 0.5;
    for (let x = 26; x <= 35; x++) {
      const share =
        sigma *
        (antiderivative((x + 0.5 - flange.offset) / sigma) -
          antiderivative((x - 0.5 - flange.offset) / sigma));
      expect((picture[30 * window.width + x] ?? 0) - 60).toBeCloseTo(100 * share, 0.9);
    }
  });

  it('show a matt ball brighter on the side of the lamp', () => {
    const light = { ambient: 0.4, azimuth: 0, tilt: 1, limb: 0 };
    expect(moments(expectation(scene({ ball: { ...ball, light } }), window)).x).toBeGreaterThan(
      ball.x + 0.5,
    );
  });
});

describe('cover of a cell', () => {
  it('is its area within a half-plane', () => {
    const random = randomStream(3);
    for (let i = 0; i < 40; i++) {
      const angle = random.uniform(0, 2 * Math.PI);
      const [nx, ny] = [Math.cos(angle), Math.sin(angle)];
      const depth = random.uniform(-0.8, 0.8);
      let inside = 0;
      const steps = 200;
      for (let a = 0; a < steps; a++) {
        for (let b = 0; b < steps; b++) {
          const x = (a + 0.5) / steps - 0.5;
          const y = (b + 0.5) / steps - 0.5;
          if (depth + nx * x + ny * y > 0) inside++;
        }
      }
      expect(coverOfCell(depth, nx, ny, 1)).toBeCloseTo(inside / steps ** 2, 2);
    }
  });
});

describe('the camera', () => {
  it('gives the mean and variance it says, rounding included', () => {
    const camera = { read: 0.05, gain: 0.004 };
    const n = 200_000;
    const level = 100.3;
    const values = expose(new Float64Array(n).fill(level), camera, randomStream(5));
    const mean = values.reduce((sum, v) => sum + v, 0) / n;
    const variance = values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / n;
    expect(mean).toBeCloseTo(level, 1);
    expect(variance / varianceAt(camera, level)).toBeCloseTo(1, 1);
  });
});
