import { describe, expect, test } from 'vitest';
import { bareBeside } from '../../../src/image/beside';
import { measureCentre } from '../../../src/image/centre';
import type { Background, BallModel } from '../../../src/image/types';
import { expose, generator, render } from './rendering';

const SIZE = 90;
const RADIUS = 12;
const NOISE = 2;
const MIDDLE = [44.3, 45.6] as const;
const SQUARE = [1, 0, 0, 1] as const;
const SCENE = 150;
const BALL = 50;
const background: Background = {
  width: SIZE,
  height: SIZE,
  white: 255,
  noise: { readVariance: NOISE * NOISE + 1 / 12, gain: 0 },
  level: new Float32Array(SIZE * SIZE).fill(SCENE),
};
const ball: BallModel = { radius: RADIUS, blur: [0, 0], region: [0, 0, SIZE, SIZE] };
const random = generator(3);

/** Dark ball on a bright wall; its shadow, a soft disc half as dark, lies `below` px under its centre. */
function frameWithShadow(below: number | null) {
  const shadow = (x: number, y: number) =>
    below === null
      ? 0
      : 50 / (1 + Math.exp((Math.hypot(x - MIDDLE[0], y - MIDDLE[1] - below) - RADIUS) / 1.5));
  const image = render({
    ...{ width: SIZE, height: SIZE, centre: MIDDLE, radius: RADIUS, optics: 0.7 },
    background: (x, y) => SCENE - shadow(x, y),
    shade: () => BALL,
  });
  return expose(image, SIZE, SIZE, NOISE, random);
}
const besides = (below: number | null) =>
  bareBeside(frameWithShadow(below), background, 1, MIDDLE, ball, SQUARE);

describe('what stands beside the ball', () => {
  test('is nothing where the bare scene shows all around', () => {
    expect(besides(null).every((bare) => bare === 1)).toBe(true);
  });

  test('is told where a shadow touches the ball, and not on the far side', () => {
    const bare = besides(7);
    // Sector 18 of 72 points down the picture.
    expect(bare[18]).toBe(0);
    expect([...bare.slice(40, 68)]).toEqual(Array(28).fill(1));
    expect(bare.filter((one) => one === 0).length).toBeGreaterThan(15);
  });

  test('does not draw the centre towards a shadow', () => {
    const off = (below: number | null) => {
      const centre = measureCentre(frameWithShadow(below), background, MIDDLE, ball);
      if (!centre.ok) throw new Error(centre.reason.code);
      return centre.value.y - MIDDLE[1];
    };
    // Measured against all of the outline it was 0.2 px.
    expect(Math.abs(off(7))).toBeLessThan(0.12);
    expect(Math.abs(off(null))).toBeLessThan(0.05);
  });
});
