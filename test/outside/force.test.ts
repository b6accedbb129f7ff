import { expect, it } from 'vitest';
import { atmosphericForce, initialAcceleration, STANDARD_GRAVITY } from '../../src/exit/force';

// Common practice, no source: the rules of thumb people quote for such launchers.
it('puts about 127 N on a 40 mm ball at 101.3 kPa', () => {
  expect(atmosphericForce(101_300, 0.04)).toBeCloseTo(127, 0);
});

it('makes of 125 N on 2.5 g an acceleration of 5.0e4 m/s^2, about 5100 g', () => {
  const acceleration = initialAcceleration(125, 0.0025);
  expect(acceleration).toBeCloseTo(5.0e4, 6);
  expect(acceleration / STANDARD_GRAVITY / 100).toBeCloseTo(51, 0);
});
