import { expect, test } from 'vitest';
import { centreFromMiddle, inverseOf, shapeAt } from '../../../src/image/ballShape';
import type { BallModel } from '../../../src/image/types';

const camera = { centre: [511.5, 127.5], distance: 3000 } as const;
const ball: BallModel = { radius: 60, blur: [0, 0], region: [0, 0, 1024, 256], camera };

/**
 * Ends of a sphere's outline away from and towards the camera's axis, and half its width across, by
 * plane trigonometry: seen at the angle theta the sphere fills the angles theta -+ asin(R / distance).
 */
function outlineOf(off: number): { outer: number; inner: number; across: number } {
  const { distance } = camera;
  const theta = Math.atan(off / distance);
  const rho = Math.asin(ball.radius / Math.hypot(off, distance));
  return {
    outer: distance * Math.tan(theta + rho),
    inner: distance * Math.tan(theta - rho),
    // Half the minor axis of the cone's section by the image plane.
    across: (distance * Math.sin(rho)) / Math.sqrt(Math.cos(theta + rho) * Math.cos(theta - rho)),
  };
}

test.each([120, 400, 500])('a sphere seen %i px off the axis', (off) => {
  const at = [camera.centre[0] + off, camera.centre[1]] as const;
  const { outer, inner, across } = outlineOf(off);
  const [a, b, c, d] = shapeAt(ball, at);
  expect(Math.abs(b) + Math.abs(c)).toBeLessThan(1e-9);
  const ratio = (outer - inner) / 2 / across;
  expect(d / a).toBeCloseTo(ratio, 6);
  expect(ball.radius / d).toBeCloseTo(across, 5);
  const middle = [camera.centre[0] + (outer + inner) / 2, at[1]] as const;
  const centre = centreFromMiddle(ball, middle);
  expect(Math.abs(centre[0] - at[0])).toBeLessThan(1e-4);
  expect(Math.abs(middle[0] - at[0])).toBeGreaterThan(0.04);
});

test('a rolling shutter and its inverse', () => {
  const readout = { direction: [0, -1], motionPerLine: [0.02, 0.1] } as const;
  const { camera: _, ...plain } = ball;
  const shape = shapeAt({ ...plain, readout }, [300, 100]);
  // Ten lines up are read ten lines later, when the ball is 1 px lower: 11 px between image and ball.
  expect(shape[1] * -10).toBeCloseTo(-0.2, 12);
  expect(shape[3] * -10).toBeCloseTo(-11, 12);
  const [a, b, c, d] = inverseOf(shape);
  const [e, f, g, h] = shape;
  expect(a * e + b * g).toBeCloseTo(1, 12);
  expect(a * f + b * h).toBeCloseTo(0, 12);
  expect(c * e + d * g).toBeCloseTo(0, 12);
  expect(c * f + d * h).toBeCloseTo(1, 12);
  expect(shapeAt(plain, [300, 100])).toEqual([1, 0, 0, 1]);
  expect(centreFromMiddle(plain, [300, 100])).toEqual([300, 100]);
});
