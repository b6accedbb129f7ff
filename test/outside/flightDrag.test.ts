import { describe, expect, it } from 'vitest';
import { airDensity } from '../../src/core/air';
import { dragOf } from '../../src/exit/drag';
import { moveTo, nowhere } from '../../src/exit/motion';

/**
 * Loss of speed over 10 cm, deceleration and e-fold length 2 m / (density * area * Cd) of a 40 mm, 2.7 g ball (ITTF
 * Technical Leaflet T3) in air of 20 degrees, worked out apart from this program. The loss is that at the deceleration of
 * the start, k v0 s; slowing as it goes the ball loses 1 - k s / 2 of that, the next term being under 1e-4 of it.
 */
const ball = { diameter: 0.04, mass: 0.0027, density: airDensity(293.15, 101_325, 0) };
const ZONE = { shape: 'straight', length: 0.1 } as const;

function stateAt(s: number, v0: number, k: number) {
  const moved = nowhere();
  let t = s / v0;
  for (let i = 0; i < 20; i++) {
    moveTo('quadraticDrag', Float64Array.of(0, v0, k, 0), ZONE, t, moved);
    t += (s - moved.s) / moved.v;
  }
  return moved;
}

describe('a table-tennis ball in flight', () => {
  it.each([
    [100, 0.47, 1.32, 1.3e3, 7.6],
    [200, 0.53, 2.97, 5.9e3, 6.7],
    [250, 0.62, 4.34, 1.1e4, 5.8],
    [300, 0.7, 5.88, 1.8e4, 5.1],
  ])('at %d m/s with Cd %d loses %d m/s in 10 cm', (v0, cd, loss, deceleration, fold) => {
    const k = dragOf(ball, cd);
    // The table is rounded to 0.01 m/s, the coefficients to two digits.
    const slowing = 1 - (k * 0.1) / 2;
    expect(Math.abs((v0 - stateAt(0.1, v0, k).v) / slowing - loss)).toBeLessThan(0.01);
    expect(k * v0 ** 2).toBeGreaterThan(0.96 * deceleration);
    expect(k * v0 ** 2).toBeLessThan(1.04 * deceleration);
    expect(Math.abs(1 / k - fold)).toBeLessThan(0.06);
    // Over the e-fold length the speed falls to 1/e.
    expect(stateAt(1 / k, v0, k).v / v0).toBeCloseTo(Math.exp(-1), 9);
  });
});
