import { describe, expect, it } from 'vitest';
import {
  DRAG,
  LOSS,
  type Motion,
  moveTo,
  nowhere,
  placesAt,
  T0,
  V0,
  type Zone,
} from '../../../src/exit/motion';
import { BALL, fly, HIGH_SPEED } from './shots';

const at = (
  motion: Motion,
  theta: readonly number[],
  t: number,
  shape: Zone['shape'] = 'straight',
) => {
  const out = nowhere();
  moveTo(motion, Float64Array.from(theta), { shape, length: 0.075 }, t, out);
  return out;
};

describe.each([
  ['uniform', 'straight'],
  ['constantAcceleration', 'straight'],
  ['quadraticDrag', 'straight'],
  ['uniform', 'tail'],
  ['quadraticDrag', 'tail'],
] as const)('%s, %s zone', (motion, shape) => {
  const theta = [0.001, 180, motion === 'uniform' ? 0 : 0.1, 0.012];

  it('leaves the muzzle plane at its exit time with its exit speed', () => {
    const { s, v } = at(motion, theta, 0.001, shape);
    expect(s).toBe(0);
    expect(v).toBe(180);
  });

  it.each([-0.0002, 0.0001, 0.0003, 0.001, 0.0016])('has the right derivatives %d s on', (tau) => {
    const t = 0.001 + tau;
    const found = at(motion, theta, t, shape);
    const slope = (index: number, step: number): number => {
      const moved = (by: number) =>
        at(
          motion,
          theta.map((value, j) => (j === index ? value + by : value)),
          t,
          shape,
        ).s;
      return (moved(step) - moved(-step)) / (2 * step);
    };
    expect(found.byT0).toBeCloseTo(slope(T0, 1e-9), 3);
    expect(found.byV0).toBeCloseTo(slope(V0, 1e-3), 9);
    if (motion !== 'uniform') expect(found.byDrag).toBeCloseTo(slope(DRAG, 1e-4), 7);
    expect(found.byLoss).toBeCloseTo(slope(LOSS, 1e-4), 9);
    const speed =
      (at(motion, theta, t + 1e-8, shape).s - at(motion, theta, t - 1e-8, shape).s) / 2e-8;
    expect(found.v).toBeCloseTo(speed, 4);
  });
});

it('passes smoothly from the series to the logarithm', () => {
  // k v0 t = 1e-4 at the join.
  const below = at('quadraticDrag', [0, 100, 0.0999999, 0], 1e-5);
  const above = at('quadraticDrag', [0, 100, 0.1000001, 0], 1e-5);
  expect(above.s - below.s).toBeCloseTo(above.byDrag * 2e-7, 15);
  expect(above.byDrag).toBeCloseTo(below.byDrag, 12);
});

it('follows the equation of motion integrated in small steps', () => {
  const shot = { ...HIGH_SPEED, dragCoefficient: 0.45, loss: 0 };
  const k = (BALL.density * Math.PI * BALL.diameter ** 2 * 0.45) / (8 * BALL.mass);
  const times = [0.0002, 0.0007, 0.0014];
  fly(shot, times, BALL).forEach((s, i) => {
    expect(at('quadraticDrag', [0, 180, k, 0], times[i] as number).s).toBeCloseTo(s, 7);
  });
});

it('slows the ball by the stated share at the end of the muzzle zone, all of it or 95 %', () => {
  expect(at('uniform', [0, 180, 0, 0.012], 0.01).v).toBeCloseTo(180 * (1 - 0.012), 9);
  const atEnd = at('uniform', [0, 180, 0, 0.012], 0.075 / 180, 'tail').v;
  expect((1 - atEnd / 180) / 0.012).toBeCloseTo(0.95, 3);
});

it('has either zone set a ball back by the same far from the muzzle', () => {
  const [straight, tail] = (['straight', 'tail'] as const).map(
    (shape) => at('uniform', [0, 180, 0, 0.012], 0.005, shape).s,
  );
  expect(tail).toBeCloseTo(straight as number, 12);
});

it('gives many places at once as it does one by one', () => {
  const theta = [0.001, 180, 0.1, 0.012];
  const times = Float64Array.of(0.0009, 0.0011, 0.0014, 0.003);
  const places = new Float64Array(times.length);
  const zone: Zone = { shape: 'tail', length: 0.075 };
  placesAt('quadraticDrag', Float64Array.from(theta), zone, times, places);
  expect([...places]).toEqual(Array.from(times, (t) => at('quadraticDrag', theta, t, 'tail').s));
});
