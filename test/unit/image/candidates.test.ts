import { beforeAll, describe, expect, test } from 'vitest';
import { findCandidates } from '../../../src/image/candidates';
import { loadVision, type Vision } from '../../../src/image/opencv/vision';
import type { Background } from '../../../src/image/types';
import { type BallScene, expose, generator, lit, render } from './rendering';

const WIDTH = 260;
const HEIGHT = 110;
const scenery = (x: number, y: number) => 70 + 0.15 * x + 6 * Math.sin(y / 9);

const background: Background = {
  width: WIDTH,
  height: HEIGHT,
  white: 255,
  noise: { readVariance: 4, gain: 0 },
  level: Float32Array.from({ length: WIDTH * HEIGHT }, (_, p) =>
    scenery(p % WIDTH, Math.floor(p / WIDTH)),
  ),
};

let vision: Vision;
beforeAll(async () => {
  vision = await loadVision();
});

const look = (scene: Partial<BallScene>, radius = 22, blur: readonly [number, number] = [0, 0]) =>
  findCandidates(
    expose(
      render({
        width: WIDTH,
        height: HEIGHT,
        centre: [130, 55],
        radius,
        background: scenery,
        shade: lit(200),
        blur,
        ...scene,
      }),
      WIDTH,
      HEIGHT,
      2,
      generator(11),
    ),
    background,
    1,
    { radius: 22, blur: [0, 0], region: [0, 0, WIDTH, HEIGHT] },
    vision,
  );

describe('candidates', () => {
  test.each([
    ['a bright ball', {}],
    ['a dark ball', { shade: () => 25 }],
    ['a ball off the pixel grid', { centre: [97.4, 41.7] as const }],
  ])('%s is found near its centre, whole', (_, scene) => {
    const [best, ...others] = look(scene);
    const [x, y] = ('centre' in scene && scene.centre) || [130, 55];
    expect(best).toBeDefined();
    expect(Math.hypot((best?.x ?? 0) - x, (best?.y ?? 0) - y)).toBeLessThan(0.15 * 22);
    expect(best?.score).toBeGreaterThan(0.75);
    expect(best?.visible).toBeGreaterThan(0.9);
    expect(others).toEqual([]);
  });

  test('blur of one radius does not lose it', () => {
    const [best] = look({}, 22, [22, 0]);
    expect(Math.hypot((best?.x ?? 0) - 130, (best?.y ?? 0) - 55)).toBeLessThan(0.2 * 22);
  });

  test('half a ball behind a wall is found with its share', () => {
    const [best] = look({ wall: (x) => x < 130 });
    expect(best).toBeDefined();
    expect(Math.abs((best?.x ?? 0) - 130)).toBeLessThan(0.5 * 22);
    expect(best?.visible).toBeGreaterThan(0.4);
    expect(best?.visible).toBeLessThan(0.85);
  });

  test('a ball cut by the border of the frame is found', () => {
    const [best] = look({ centre: [254, 55] });
    expect(best).toBeDefined();
    expect(Math.abs((best?.x ?? 0) - 254)).toBeLessThan(0.4 * 22);
  });

  test('fragments against the ball do not hide it, and small ones alone are nothing', () => {
    const fragment = (x: number, y: number) =>
      (Math.abs(x - 155) < 9 && Math.abs(y - 50) < 6) ||
      (Math.abs(x - 60) < 6 && Math.abs(y - 80) < 4)
        ? 150
        : null;
    const [best] = look({ fragment });
    expect(Math.hypot((best?.x ?? 0) - 130, (best?.y ?? 0) - 55)).toBeLessThan(0.3 * 22);
    expect(look({ fragment, centre: [-80, 55] })).toEqual([]);
  });

  test('an empty frame has none', () => {
    expect(look({ centre: [-80, 55] })).toEqual([]);
  });

  test.each([0.75, 1.25])('a disc of %f of the radius is told by its rim', (share) => {
    const dark = { shade: () => 25 };
    expect(look(dark, share * 22)[0]?.rim?.size).toBeCloseTo(share, 1);
    expect(look(dark)[0]?.rim?.size).toBeCloseTo(1, 1);
  });

  test('a ball in dense mist is found, and is sharper than the mist', () => {
    const mist = (x: number, y: number) =>
      scenery(x, y) + 60 * Math.exp(-0.5 * (((x - 150) / 60) ** 2 + ((y - 50) / 40) ** 2));
    const places = look({ background: mist, shade: () => 210 });
    const ball = places.find(({ x, y }) => Math.hypot(x - 130, y - 55) < 0.1 * 22);
    expect(ball?.rim?.size).toBeCloseTo(1, 1);
    for (const other of places.filter((place) => place !== ball)) {
      expect(other.rim?.round ?? 0).toBeLessThan(0.7 * (ball?.rim?.round ?? 0));
    }
  });

  test('a ball and its soft shadow against it are found apart', () => {
    const shadow = (x: number, y: number) => {
      const inside = 22 - Math.hypot(x - 142, y - 72);
      return scenery(x, y) * (1 - 0.5 * Math.min(1, Math.max(0, 0.5 + inside / 10)));
    };
    const places = look({ background: shadow, centre: [130, 50], shade: () => 190 });
    const [best] = places;
    expect(Math.hypot((best?.x ?? 0) - 130, (best?.y ?? 0) - 50)).toBeLessThan(0.1 * 22);
    expect(best?.rim?.contrast).toBeGreaterThan(80);
    const dark = places.find(({ rim }) => (rim?.contrast ?? 0) < 0);
    expect(dark?.rim?.sharp ?? 0).toBeLessThan(0.8 * (best?.rim?.sharp ?? 0));
  });

  test('only the region is searched', () => {
    const frame = expose(
      render({ width: WIDTH, height: HEIGHT, centre: [130, 55], radius: 22, background: scenery }),
      WIDTH,
      HEIGHT,
      2,
      generator(12),
    );
    const ball = { radius: 22, blur: [0, 0], region: [0, 0, 60, HEIGHT] } as const;
    expect(findCandidates(frame, background, 1, ball, vision)).toEqual([]);
  });
});
