import { describe, expect, test } from 'vitest';
import type { GreyFrame } from '../../../src/core/frame';
import { measureCentre } from '../../../src/image/centre';
import type { Background, BallModel } from '../../../src/image/types';
import { behindVeil } from '../../../src/image/veil';
import { type BallScene, expose, generator, render } from './rendering';

const SIZE = 90;
const RADIUS = 14;
const NOISE = 2;
const MIDDLE = [44.3, 45.6] as const;
const SQUARE = [1, 0, 0, 1] as const;
const EVERYWHERE = new Uint8Array(72).fill(1);
const background: Background = {
  width: SIZE,
  height: SIZE,
  white: 255,
  noise: { readVariance: NOISE * NOISE + 1 / 12, gain: 0 },
  level: new Float32Array(SIZE * SIZE).fill(60),
};
const ball: BallModel = { radius: RADIUS, blur: [0, 0], region: [0, 0, SIZE, SIZE] };
const random = generator(7);

function frameOf(
  scene: Partial<BallScene>,
  over = (_x: number, _y: number, value: number) => value,
) {
  const image = render({
    width: SIZE,
    height: SIZE,
    centre: MIDDLE,
    radius: RADIUS,
    optics: 0.6,
    ...scene,
  });
  const veiled = image.map((value, p) => over(p % SIZE, Math.floor(p / SIZE), value));
  return expose(veiled, SIZE, SIZE, NOISE, random);
}
const around = (frame: GreyFrame) =>
  behindVeil(frame, background, 1, MIDDLE, ball, SQUARE, EVERYWHERE);

/** Mist before ball and scene, thicker to one side. */
const mist = (x: number, y: number, value: number) => {
  const thick = 0.15 + 0.15 * Math.sin((x - 20) / 14) * Math.cos((y - 50) / 25);
  return value + thick * (175 - value);
};

describe('the background behind a veil', () => {
  test('is that of the ring around the ball, carried on inwards', () => {
    const lit = (x: number, y: number) => 75 + 0.6 * (x - 44) - 0.3 * (y - 45);
    const { level } = around(frameOf({ background: lit }));
    for (const [dx, dy] of [
      [0, 0],
      [RADIUS, 0],
      [0, -RADIUS],
      [-12, 12],
    ] as const) {
      const [x, y] = [44 + dx, 45 + dy];
      expect(Math.abs((level[y * SIZE + x] as number) - lit(x, y))).toBeLessThan(1);
    }
    // Beyond the ring nothing is touched.
    expect(level[0]).toBe(60);
  });

  test('is the plain one where the ring shows nothing but noise', () => {
    for (let i = 0; i < 10; i++) expect(around(frameOf({}))).toBe(background);
  });

  test('is the plain one where something with an edge stands beside the ball', () => {
    const post = (x: number) => (x > 60 && x < 72 ? 150 : null);
    expect(around(frameOf({ fragment: post }))).toBe(background);
  });

  test('lets mist move the centre by no more than a small part of a pixel', () => {
    let worst = 0;
    for (let i = 0; i < 6; i++) {
      const found = measureCentre(frameOf({}, mist), background, [45, 45], ball);
      if (!found.ok) throw new Error(found.reason.message);
      worst = Math.max(worst, Math.hypot(found.value.x - MIDDLE[0], found.value.y - MIDDLE[1]));
    }
    expect(worst).toBeLessThan(0.12);
  });
});
